/** A soft edge: 0 well below `edgeNm`, a half there, 1 well above (logistic). `widthNm` above 0; larger is softer. */
export function risingEdge(nm: number, edgeNm: number, widthNm: number): number {
  return 1 / (1 + Math.exp((edgeNm - nm) / widthNm))
}
