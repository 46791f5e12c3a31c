/** Part of every shape's hash: raise it whenever sculpting, measuring, preparing or painting changes its result. */
export const PREPARER_VERSION = 2;
