/** Tells a preparing thread from any other thread that happens to load the same file. */
export const SHAPE_WORKER = 'tooth-table-shape-worker';
