import { z } from 'zod'
import { coordinateMetres, colourTemperatureKelvin, idText, shortText, sizeMetres, swatch } from './quantities.ts'

const columnSchema = z.strictObject({
  label: shortText,
  xMetres: coordinateMetres,
  yMetres: coordinateMetres,
  widthMetres: sizeMetres,
  depthMetres: sizeMetres,
})

const circuitSchema = z.strictObject({
  label: shortText,
  breakerAmps: z.number().min(1).max(125),
})

/** The room by a handful of tape measures from the subject's T (the zero of the set). */
export const roomSchema = z.strictObject({
  name: shortText,
  widthMetres: sizeMetres,
  lengthMetres: sizeMetres,
  heightMetres: sizeMetres,
  /** From the T to the wall at camera left. */
  markFromLeftWallMetres: sizeMetres,
  /** From the T to the wall behind the backdrop. */
  markFromRearWallMetres: sizeMetres,
  surfaces: z.strictObject({
    leftWall: swatch,
    rightWall: swatch,
    rearWall: swatch,
    frontWall: swatch,
    ceiling: swatch,
    floor: swatch,
  }),
  columns: z.record(idText, columnSchema),
  /** Steady light left on in the room, measured at the subject, and its colour. */
  ambientLux: z.number().min(0).max(200_000),
  ambientKelvin: colourTemperatureKelvin,
  mainsVolts: z.number().min(90).max(260),
  circuits: z.record(idText, circuitSchema),
})
export type Room = z.infer<typeof roomSchema>
