/**
 * Lets pages of other sites show an answer, as viewers of manifests do (IIIF Presentation 3.0, "Responses": CORS), where
 * the exhibit stands on the web; elsewhere it stays this site's own.
 */
export function openToWeb(response: Response, publicAddress: string | undefined): Response {
	if (publicAddress === undefined) return response;
	response.headers.set('access-control-allow-origin', '*');
	response.headers.set('cross-origin-resource-policy', 'cross-origin');
	return response;
}
