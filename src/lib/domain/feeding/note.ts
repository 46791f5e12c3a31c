/** Where a result leaves the ground of its model. Plain data: the words stand in content. */
export interface ValidityNote {
	code:
		| 'beyond-elastic' // contact pressure above what the softer body stands: it has yielded, the true pressure is lower
		| 'deeper-than-crown' // the crown ends before this depth
		| 'deeper-than-prey' // the layers end before this depth
		| 'contact-not-small' // contact radius no longer small beside the tip's: Hertz does not hold
		| 'stubby-beam' // shorter than twice its thickness: a beam formula overrates bending
		| 'tip-not-told' // no tip radius: one was assumed
		| 'mammal-strength' // strength of the crown was measured on mammals' teeth
		| 'recalled' // rests on a value that nobody has looked up again
		| 'stand-in' // the material's value was measured on another, similar one
		| 'edges-not-tested' // whether edges help in this material has not been tested
		| 'teaching-model'; // right in direction, not in its figures
	/** what the limit is and what was found, where it is a number; unit by the code */
	limit?: number;
	found?: number;
	/** id of the material or layer that it is about */
	about?: string;
}
