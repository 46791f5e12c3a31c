import { beatSchema } from '../../../lib/server/screens/beatSchema';
import { getScreens } from '../../../lib/server/screens/getScreens';
import { takeWord } from '../../../lib/server/screens/takeWord';
import type { RequestHandler } from './$types';

/** A gallery's screen says how it is, every half a minute. */
export const POST: RequestHandler = ({ request }) =>
	takeWord(request, beatSchema, (beat) => getScreens().beat(beat));
