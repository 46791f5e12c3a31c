import type { PreyOutline } from '../../content/feedingContent';
import type { Texture } from './scene';

/** Words in a material's id that say how it is drawn, the first that fits. */
const BY_WORD: readonly [RegExp, Texture][] = [
	[/core|spong/, 'sponge'],
	[/scute|horn|keratin/, 'horn'],
	[/skin|hide/, 'skin'],
	[/mantle|squid/, 'mantle'],
	[/scale|osteoderm/, 'scale'],
	[/muscle|flesh|meat|body/, 'flesh'],
	[/shell|nacre/, 'shell'],
	[/bone/, 'bone'],
];
const BY_OUTLINE: Readonly<Record<PreyOutline, Texture>> = {
	flesh: 'flesh',
	squid: 'mantle',
	fish: 'flesh',
	bone: 'bone',
	shell: 'shell',
	turtle: 'bone',
};

/** How a layer of a prey is drawn. */
export const textureOf = (material: string, outline: PreyOutline): Texture => {
	const found = BY_WORD.find(([word]) => word.test(material))?.[1] ?? BY_OUTLINE[outline];
	return found === 'shell' && outline === 'turtle' ? 'bone' : found;
};
