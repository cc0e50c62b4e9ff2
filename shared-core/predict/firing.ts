import { timesFromStops } from '../arithmetic/portable.ts'
import { whiteBalanceGains } from '../colour/camera.ts'
import { ambientLuxSeconds } from '../exposure/ambient.ts'
import { luminousEnergyLumenSeconds } from '../photometry/luminousEnergy.ts'
import type { Head, Modifier } from '../plan/schema/kit.ts'
import type { Light, Look } from '../plan/schema/look.ts'
import type { Plan } from '../plan/schema/plan.ts'
import { flashSpectrum } from '../spectra/flash.ts'
import type { AmbientLight, FiringLight } from './areas.ts'
import { lightColour, type LightColour } from './lightColour.ts'
import { LightPalette } from './lightPalette.ts'
import { learnedStopsOf } from './learnedStops.ts'
import { lightsInSetUpOrder } from './sceneOfLook.ts'
import { Stage, StagesByKey } from './stage.ts'

/** A light of the look with all that is known of it apart from geometry. */
export interface FiredLight {
  readonly id: string
  readonly light: Light
  readonly head: Head
  readonly modifier: Modifier
  readonly colour: LightColour
  readonly firing: FiringLight
}

/** Colour and strength of every light: the half of the prediction that knows no geometry. Serves numbers and picture. */
export class FiringStage {
  private readonly colours = new StagesByKey<LightColour>()
  private readonly palettes = new StagesByKey<LightPalette>()
  private readonly ambientPalette = new Stage<LightPalette>()

  /** In set-up order; a light whose head or modifier the kit has lost is left out. */
  lights(plan: Plan, look: Look): readonly FiredLight[] {
    const { whiteBalanceKelvin } = look.camera
    const gains = whiteBalanceGains(whiteBalanceKelvin)
    const fired = lightsInSetUpOrder(look).flatMap(([id, light]): FiredLight[] => {
      const head = plan.heads[light.headId]
      const modifier = plan.modifiers[light.modifierId]
      if (!head || !modifier) return []
      const colour = this.colours.of(id, [light.energyJoules, light.gelIds, head, plan.gels], () => lightColour(light, head, plan.gels))
      const palette = this.palettes.of(id, [colour.emission, whiteBalanceKelvin], () => new LightPalette(colour.emission, gains))
      const bareTube = luminousEnergyLumenSeconds(light.energyJoules, head.efficacyLumenSecondsPerJoule)
      const luminousEnergyLumenSecondsOut = timesFromStops(learnedStopsOf(plan, light)) * bareTube
      const firing = { id, on: light.on, luminousEnergyLumenSeconds: luminousEnergyLumenSecondsOut, palette }
      return [{ id, light, head, modifier, colour, firing }]
    })
    const ids = new Set(fired.map(({ id }) => id))
    this.colours.keepOnly(ids)
    this.palettes.keepOnly(ids)
    return fired
  }

  ambient(plan: Plan, look: Look): AmbientLight {
    const { whiteBalanceKelvin, shutterSeconds } = look.camera
    return {
      luxSeconds: ambientLuxSeconds(plan.room.ambientLux, shutterSeconds),
      palette: this.ambientPalette.of([plan.room.ambientKelvin, whiteBalanceKelvin], () =>
        new LightPalette(flashSpectrum(plan.room.ambientKelvin), whiteBalanceGains(whiteBalanceKelvin))),
    }
  }
}
