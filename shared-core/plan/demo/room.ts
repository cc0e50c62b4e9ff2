import type { Room } from '../schema/room.ts'

/** White walls and ceiling, grey painted floor, house lights off. */
export const demoRoom: Room = {
  name: 'The long room',
  widthMetres: 5.6,
  lengthMetres: 8.4,
  heightMetres: 3.2,
  markFromLeftWallMetres: 2.8,
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
  circuits: {
    left: { label: 'Left wall', breakerAmps: 16 },
    right: { label: 'Right wall', breakerAmps: 16 },
    tether: { label: 'Tether station', breakerAmps: 16 },
  },
}
