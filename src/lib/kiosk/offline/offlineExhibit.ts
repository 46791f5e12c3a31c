import { LIST, readExportList, type ExportList } from './exportList';

/** The browser, as far as a service worker needs it; a test gives its own. */
export interface OfflineTools {
	/** address of the export's root, ends in / */
	root: string;
	caches: Pick<CacheStorage, 'open' | 'keys' | 'delete'>;
	fetch: (address: string, init?: RequestInit) => Promise<Response>;
	sha256: (bytes: ArrayBuffer) => Promise<string>;
	/** ids of the pages that are open, and of their workers */
	pages: () => Promise<{ id: string; window: boolean }[]>;
}

interface Kept {
	/** the version that a new visit gets */
	current: string | null;
	/** one that is here whole and waits until nobody is at work */
	next: string | null;
	/** which version a page that is open began with */
	pages: Record<string, string>;
}

export interface Offered {
	exhibit: string;
	code: string;
}

const AT_ONCE = 6;

/**
 * Keeps whole versions of an export in the browser. A visit is served one of them from beginning to end. A newer one is
 * fetched in the background, every file checked against its hash, and comes into use only when `take` is called or a page
 * is opened while no other is.
 */
export class OfflineExhibit {
	#tools: OfflineTools;
	#kept: Promise<Kept> | null = null;
	#keeping: Promise<void> | null = null;

	constructor(tools: OfflineTools) {
		this.#tools = tools;
	}

	/**
	 * Looks for another version and fetches it whole. What fails leaves everything as it was; the next try goes on with the
	 * files that have come. Gives what a new visit would be shown; null while there is nothing whole.
	 */
	async keep(): Promise<Offered | null> {
		this.#keeping ??= this.#fetchOther().finally(() => (this.#keeping = null));
		await this.#keeping.catch(() => undefined);
		const { current, next } = await this.#read();
		const version = next ?? current;
		const list = version === null ? null : await this.#listOf(version);
		return list && { exhibit: list.exhibit, code: list.code };
	}

	/** From here on new pages get the version that waits. */
	async take(): Promise<void> {
		const kept = await this.#read();
		if (kept.next === null) return;
		kept.current = kept.next;
		kept.next = null;
		await this.#write(kept);
	}

	/** Answers a page's request from the version it began with; null where that has no such file. */
	async answer(
		address: string,
		asker: { page: string; opens: string | null; navigates: boolean },
	): Promise<Response | null> {
		let kept = await this.#read();
		if (asker.navigates && kept.next !== null) {
			const others = (await this.#tools.pages()).filter(
				({ id, window }) => window && id !== asker.page && id !== asker.opens,
			);
			if (others.length === 0) await this.take();
			kept = await this.#read();
		}
		const version = (asker.navigates ? null : kept.pages[asker.page]) ?? kept.current;
		if (version === null) return null;
		if (asker.opens) {
			kept.pages[asker.opens] = version;
			await this.#write(kept);
		}
		const cache = await this.#tools.caches.open(this.#name(version));
		for (const file of this.#files(address)) {
			const found = await cache.match(this.#tools.root + file);
			if (!found) continue;
			const folder = new URL(address).pathname.endsWith('/') || !file.endsWith('/index.html');
			if (!asker.navigates || folder) return found;
			// what a page names is named from its folder
			const { pathname, search } = new URL(address);
			return Response.redirect(new URL(`${pathname}/${search}`, address).href, 302);
		}
		return null;
	}

	/** The list of the version that new pages get, for a page that asks while the network is away. */
	async list(): Promise<Response | null> {
		const { current } = await this.#read();
		if (current === null) return null;
		const cache = await this.#tools.caches.open(this.#name(current));
		return (await cache.match(this.#tools.root + LIST)) ?? null;
	}

	/** The files that may lie behind an address: a page is a folder with an index in it. */
	#files(address: string): string[] {
		const { pathname } = new URL(address);
		const inside = pathname.slice(new URL(this.#tools.root).pathname.length);
		if (inside === '' || inside.endsWith('/')) return [`${inside}index.html`];
		return [inside, `${inside}/index.html`];
	}

	async #fetchOther(): Promise<void> {
		const { root, fetch } = this.#tools;
		const answer = await fetch(root + LIST, { cache: 'no-store' });
		if (!answer.ok) throw new Error('keep: no list');
		const text = await answer.text();
		const list = readExportList(text);
		if (!list) throw new Error('keep: what came is no list');
		const before = await this.#read();
		if (list.version !== before.current && list.version !== before.next) {
			const olds = await Promise.all(
				[before.current, before.next].map((version) => (version === null ? null : this.#hashes(version))),
			);
			const cache = await this.#tools.caches.open(this.#name(list.version));
			const files = list.files.filter(({ path }) => path !== 'service-worker.js');
			const work = async (): Promise<void> => {
				for (let file = files.pop(); file; file = files.pop()) {
					const address = root + file.path;
					if (await cache.match(address)) continue;
					const old = olds.find((hashes) => hashes?.sha256.get(file.path) === file.sha256);
					const here = await old?.cache.match(address);
					await cache.put(address, here ?? (await this.#fetchFile(address, file.sha256)));
				}
			};
			await Promise.all(Array.from({ length: AT_ONCE }, work));
			// last: a cache without its list is not whole
			await cache.put(root + LIST, new Response(text, { headers: { 'content-type': 'application/json' } }));
			const kept = await this.#read();
			if (kept.current === null) kept.current = list.version;
			else kept.next = list.version;
			await this.#write(kept);
		} else if (list.version === before.current && before.next !== null) {
			// taken back before anybody saw it
			before.next = null;
			await this.#write(before);
		}
		await this.#prune();
	}

	async #fetchFile(address: string, sha256: string): Promise<Response> {
		const answer = await this.#tools.fetch(address, { cache: 'no-cache' });
		if (!answer.ok) throw new Error(`keep: ${address} answered ${answer.status}`);
		const bytes = await answer.arrayBuffer();
		if ((await this.#tools.sha256(bytes)) !== sha256)
			throw new Error(`keep: ${address} is not what was listed`);
		const headers = new Headers(answer.headers);
		for (const name of ['content-encoding', 'content-length', 'transfer-encoding', 'vary'])
			headers.delete(name);
		return new Response(bytes, { headers });
	}

	async #listOf(version: string): Promise<ExportList | null> {
		const cache = await this.#tools.caches.open(this.#name(version));
		const found = await cache.match(this.#tools.root + LIST);
		return found ? readExportList(await found.text()) : null;
	}

	async #hashes(version: string): Promise<{ cache: Cache; sha256: Map<string, string> } | null> {
		const list = await this.#listOf(version);
		if (!list) return null;
		const sha256 = new Map(list.files.map((file) => [file.path, file.sha256]));
		return { cache: await this.#tools.caches.open(this.#name(version)), sha256 };
	}

	/** Lets go of versions that nobody uses and nobody will. */
	async #prune(): Promise<void> {
		const kept = await this.#read();
		const open = new Set((await this.#tools.pages()).map(({ id }) => id));
		for (const id of Object.keys(kept.pages)) if (!open.has(id)) delete kept.pages[id];
		await this.#write(kept);
		const wanted = [kept.current, kept.next, ...Object.values(kept.pages)];
		const names = new Set(wanted.flatMap((version) => (version === null ? [] : [this.#name(version)])));
		for (const name of await this.#tools.caches.keys())
			if (name.startsWith(this.#name('')) && !names.has(name)) await this.#tools.caches.delete(name);
	}

	/** Several exports may stand on one site. */
	#name(version: string): string {
		return `tooth-table${new URL(this.#tools.root).pathname}version-${version}`;
	}
	get #stateAddress(): { cache: string; entry: string } {
		return {
			cache: `tooth-table${new URL(this.#tools.root).pathname}state`,
			entry: `${this.#tools.root}offline-state`,
		};
	}

	#read(): Promise<Kept> {
		this.#kept ??= this.#readState();
		return this.#kept;
	}
	async #readState(): Promise<Kept> {
		const { cache, entry } = this.#stateAddress;
		const found = await (await this.#tools.caches.open(cache)).match(entry);
		const none: Kept = { current: null, next: null, pages: {} };
		if (!found) return none;
		const kept = { ...none, ...((await found.json()) as Partial<Kept>) };
		// a browser short of room may have thrown a version away
		for (const which of ['next', 'current'] as const) {
			const version = kept[which];
			if (version !== null && !(await this.#listOf(version))) kept[which] = null;
		}
		return kept;
	}
	async #write(kept: Kept): Promise<void> {
		const { cache, entry } = this.#stateAddress;
		await (await this.#tools.caches.open(cache)).put(entry, new Response(JSON.stringify(kept)));
	}
}
