// Where systemd started the server with Type=notify: tells it that the exhibit is open, and after that, as often
// as WatchdogSec asks, that the server still answers. Elsewhere this does nothing.
// systemd-notify does the talking: Node has no datagram sockets of the kind that systemd listens on.
import { execFile } from 'node:child_process';

/**
 * @param {string} address where the server answers, e.g. http://127.0.0.1:4173
 * @param {{ env?: NodeJS.ProcessEnv, tell?: (word: string) => void, every?: (ms: number, does: () => void) => void }} [options]
 */
export function tellSystemd(address, options = {}) {
	const env = options.env ?? process.env;
	if (!env.NOTIFY_SOCKET) return;
	const tell = options.tell ?? ((word) => execFile('systemd-notify', [word], { timeout: 10_000 }, () => {}));
	const every = options.every ?? ((ms, does) => setInterval(does, ms).unref());
	tell('READY=1');
	const watchdog_us = Number(env.WATCHDOG_USEC);
	if (!(watchdog_us > 0)) return;
	// half the time that systemd grants, so that one slow answer ends nothing
	every(watchdog_us / 2000, () => {
		fetch(new URL('/healthz', address), { signal: AbortSignal.timeout(Math.min(watchdog_us / 4000, 10_000)) })
			// "no exhibit to show" is an answer too: starting again would not mend the files
			.then((answer) => (answer.status < 500 || answer.status === 503) && tell('WATCHDOG=1'))
			.catch(() => {});
	});
}
