import type { NamedArea } from '../plan/schema/look.ts'

/** What people call the named areas. Left and right are the camera's, never the stage's. */
export const areaLabels: Readonly<Record<NamedArea, string>> = {
  nose: 'nose',
  lips: 'lips',
  'cheek-left': 'camera-left cheek',
  'cheek-right': 'camera-right cheek',
  'jaw-left': 'camera-left jaw',
  'jaw-right': 'camera-right jaw',
  'rear-jaw-left': 'camera-left rear jaw',
  'rear-jaw-right': 'camera-right rear jaw',
  neck: 'neck',
  hair: 'hair',
  'shoulder-left': 'camera-left shoulder',
  'shoulder-right': 'camera-right shoulder',
  breastbone: 'breastbone',
  'background-centre': 'background centre',
  'background-top-left': 'background top left',
  'background-top-right': 'background top right',
  'background-bottom-left': 'background bottom left',
  'background-bottom-right': 'background bottom right',
}
