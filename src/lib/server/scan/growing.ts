/** A list of numbers whose length is not known beforehand; twice the room when it is full. */
class Growing<A extends Float64Array | Uint32Array> {
	length = 0;
	constructor(
		private readonly make: (length: number) => A,
		private array: A = make(1024),
	) {}

	push(value: number): void {
		if (this.length === this.array.length) {
			const larger = this.make(this.length * 2);
			larger.set(this.array);
			this.array = larger;
		}
		this.array[this.length++] = value;
	}

	/** the numbers so far; valid until the next `push` */
	view(): A {
		return this.array.subarray(0, this.length) as A;
	}
}

export const growingFloats = () => new Growing((length) => new Float64Array(length));
export const growingIndices = () => new Growing((length) => new Uint32Array(length));
export type GrowingFloats = ReturnType<typeof growingFloats>;
export type GrowingIndices = ReturnType<typeof growingIndices>;
