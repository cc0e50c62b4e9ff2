// Only the shapes that the Floor draws, so that the rest of Konva stays out of the page.
import 'konva/lib/shapes/Image'
import 'konva/lib/shapes/Line'
import 'konva/lib/shapes/Circle'
import 'konva/lib/shapes/Rect'

export { Circle, Group, Image, Layer, Line, Rect, Stage } from 'react-konva/lib/ReactKonvaCore'
