import type { Room } from '../schema/room.ts'

/** A small white studio before anybody has been there with a tape measure. Common practice, no source. */
export const usualRoom: Room = {
  name: 'Room',
  widthMetres: 5,
  lengthMetres: 8,
  heightMetres: 3,
  markFromLeftWallMetres: 2.5,
  markFromRearWallMetres: 2.9,
  surfaces: {
    leftWall: '#eeeeee',
    rightWall: '#eeeeee',
    rearWall: '#eeeeee',
    frontWall: '#eeeeee',
    ceiling: '#eeeeee',
    floor: '#898989',
  },
  columns: {},
  ambientLux: 0,
  ambientKelvin: 4_000,
  mainsVolts: 230,
  circuits: {},
}
