/** Outcome of something that can fail for reasons the caller should explain, not crash on. */
export type Result<T, E> =
	{ readonly ok: true; readonly value: T } | { readonly ok: false; readonly problem: E };

export const ok = <T>(value: T): { readonly ok: true; readonly value: T } => ({ ok: true, value });
export const fail = <E>(problem: E): { readonly ok: false; readonly problem: E } => ({ ok: false, problem });
