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
import { SHOWN } from './shown';
import { UNREADABLE } from './unreadable';
import { VALUES } from './values';
import { WORDS } from './words';
import { WRITING } from './writing';

/** Every message in French, by id. */
export const FR = {
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
	...SHOWN,
	...UNREADABLE,
	...DESK,
} as const;
