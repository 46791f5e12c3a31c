import { hungSchema } from '../../../lib/server/screens/beatSchema';
import { getScreens } from '../../../lib/server/screens/getScreens';
import { takeWord } from '../../../lib/server/screens/takeWord';
import type { RequestHandler } from './$types';

/** The worker of a page that stands still says so. */
export const POST: RequestHandler = ({ request }) =>
	takeWord(request, hungSchema, ({ name, page }) => getScreens().hung(name, page));
