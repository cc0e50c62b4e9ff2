/**
 * What comes back from anything a person may get wrong: either what they asked for, or one sentence they can act on.
 * Nothing here throws for bad input; a throw means a bug of ours.
 */
export type Result<Fields extends object> = (Fields & { readonly ok: true }) | Refusal

export interface Refusal {
  readonly ok: false
  /** A whole sentence for the person, without jargon. */
  readonly message: string
}

/** A refusal with its sentence. */
export function refuse(message: string): Refusal {
  return { ok: false, message }
}
