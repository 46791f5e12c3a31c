import { takeCounts } from '$lib/server/counts/takeCounts';
import { useCountsSchema, useEntries } from '$lib/server/counts/useCounts';
import { getStore } from '$lib/server/getStore';
import type { RequestHandler } from './$types';

/** Takes anonymous counts of use, unless the exhibit says that it is not counted. */
export const POST: RequestHandler = takeCounts(useCountsSchema, (sent) =>
	useEntries(sent, getStore().current()),
);
