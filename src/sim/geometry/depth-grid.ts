/** Where the cells lie at which a plane's depth is asked for. */
export interface DepthGrid {
  readonly nx: number;
  readonly ny: number;
  /** mm: cell width and centre of cell (0,0) */
  readonly dx: number;
  readonly originX: number;
  readonly originY: number;
}
