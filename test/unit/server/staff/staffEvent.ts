import type { Asked } from '../../../../src/lib/server/staffOnly';

export interface StaffAsked {
	address?: string;
	host?: string;
	origin?: string;
	method?: string;
	path?: string;
	headers?: Record<string, string>;
	cookies?: Record<string, string>;
	/** a JSON body */
	body?: unknown;
	isDataRequest?: boolean;
}

/** A request as the server's routes see it; what it sets as cookies comes to stand in `cookies`. */
export function staffEvent({
	address = '127.0.0.1',
	host = 'localhost:4173',
	origin,
	method = 'GET',
	path = '/desk',
	headers = {},
	cookies = {},
	body,
	isDataRequest = false,
}: StaffAsked): Asked {
	const all = new Headers({ 'content-type': 'application/json', ...headers });
	const request = {
		method,
		// a Request would drop host and origin, which only a server or a browser may set
		headers: {
			get: (name: string) => (name === 'host' ? host : name === 'origin' ? (origin ?? null) : all.get(name)),
			has: (name: string) => all.has(name),
		},
		json: () => Promise.resolve(body),
		arrayBuffer: () => Promise.resolve(new ArrayBuffer(0)),
		formData: () => Promise.resolve(new FormData()),
		url: `http://${host}${path}`,
	} as unknown as Request;
	return {
		request,
		getClientAddress: () => address,
		url: new URL(`http://localhost${path}`),
		isDataRequest,
		cookies: {
			get: (name: string) => cookies[name],
			set: (name: string, value: string) => void (cookies[name] = value),
			delete: (name: string) => void delete cookies[name],
		} as unknown as Asked['cookies'],
	};
}
