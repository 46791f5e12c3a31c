import { ANIMALS } from './animals';
import { DESK } from './desk';
import { FEEDING } from './feeding';
import { FILES } from './files';
import { KEYS } from './keys';
import { MEASURED } from './measured';
import { QUIZ } from './quiz';
import { REFERENCES } from './references';
import { REPLACEMENT } from './replacement';
import { SCREENS } from './screens';
import { SHAPES } from './shapes';
import { UNREADABLE } from './unreadable';
import { SHOWN } from './shown';
import { VALUES } from './values';
import { WORDS } from './words';
import { WRITING } from './writing';

/** Every message in English, by id. The data that each asks for is told by its type: the other languages follow it. */
export const EN = {
	...FILES,
	...WRITING,
	...KEYS,
	...VALUES,
	...REFERENCES,
	...WORDS,
	...MEASURED,
	...ANIMALS,
	...REPLACEMENT,
	...QUIZ,
	...FEEDING,
	...SCREENS,
	...SHAPES,
	...UNREADABLE,
	...DESK,
	...SHOWN,
} as const;
