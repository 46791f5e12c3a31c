import { LOOK_EVERY_ms, PageWatch } from '../kiosk/care/pageWatch';

/** `start` with who to speak for, `here` now and then, `hidden` when the page is not seen. */
export type WatchMessage =
	{ say: 'start'; name: string | null; page: string } | { say: 'here' } | { say: 'hidden'; hidden: boolean };

const watch = new PageWatch(performance.now());
let who: { name: string | null; page: string } | null = null;

self.onmessage = ({ data }: MessageEvent<WatchMessage>) => {
	if (data.say === 'start') who = { name: data.name, page: data.page };
	else if (data.say === 'hidden') watch.pause(data.hidden);
	watch.heard();
};

setInterval(() => {
	if (!watch.look(performance.now()) || !who) return;
	// the page's own requests stand still with it; this one does not
	void fetch('/live/hung', {
		method: 'POST',
		headers: { 'content-type': 'application/json' },
		body: JSON.stringify(who),
	}).catch(() => undefined);
}, LOOK_EVERY_ms);
