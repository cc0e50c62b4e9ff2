import type { Plan } from '../schema/plan.ts'

/** Invented people. */
export const demoTeam: Plan['team'] = {
  photographer: { name: 'Ines Corvalho-Reed', job: 'Photographer' },
  'first-assistant': { name: 'Tobin Achterberg', job: 'First assistant' },
  'digital-operator': { name: 'Yara Nkemelu', job: 'Digital operator' },
  'art-director': { name: 'Pell Oduya', job: 'Art director' },
  'brand-manager': { name: 'Saskia Lindqvarn', job: 'Brand manager' },
  'make-up': { name: 'Mirele Fonoti', job: 'Make-up artist' },
  producer: { name: 'Dov Hartigan', job: 'Producer' },
  model: { name: 'Anouk', job: 'Model' },
  retoucher: { name: 'Bram Iwu', job: 'Retoucher' },
}
