import { brokenAnimals } from './brokenAnimals';
import { brokenCrowns } from './brokenCrowns';
import { brokenFeeding } from './brokenFeeding';
import { brokenFiles } from './brokenFiles';
import { brokenKeys } from './brokenKeys';
import { brokenNumbers } from './brokenNumbers';
import { brokenQuiz } from './brokenQuiz';
import { brokenReferences } from './brokenReferences';
import { brokenReplacement } from './brokenReplacement';
import { brokenScreens } from './brokenScreens';
import { brokenShapes } from './brokenShapes';
import { brokenShown } from './brokenShown';
import { brokenValues } from './brokenValues';
import { brokenWords } from './brokenWords';
import { brokenYaml } from './brokenYaml';
import type { BrokenCase } from './brokenContent';

/** Every mistake that the tests know of. */
export const BROKEN: readonly BrokenCase[] = [
	...brokenYaml,
	...brokenKeys,
	...brokenValues,
	...brokenNumbers,
	...brokenReferences,
	...brokenShapes,
	...brokenCrowns,
	...brokenFiles,
	...brokenWords,
	...brokenAnimals,
	...brokenFeeding,
	...brokenQuiz,
	...brokenReplacement,
	...brokenScreens,
	...brokenShown,
];
