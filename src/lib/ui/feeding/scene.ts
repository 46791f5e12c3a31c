/** What the bite scene is given. */

/** How a layer is drawn; content names one for each material. */
export const TEXTURES = ['skin', 'flesh', 'mantle', 'scale', 'bone', 'sponge', 'shell', 'horn'] as const;
export type Texture = (typeof TEXTURES)[number];

export interface SceneLayer {
	name: string;
	texture: Texture;
	thickness_mm: number;
	cracked: boolean;
}
export interface SceneTooth {
	/** side view of the crown in its own frame, tip up, mm */
	crown: readonly (readonly [number, number])[];
	height_mm: number;
	/** where the tip lies across, mm */
	tip_mm: number;
	depth_mm: number;
	/** tension along the crown as a share of its strength, from the tip down */
	stress: readonly { below_mm: number; share: number }[];
	/** where it has snapped, mm below the tip */
	snapped_mm: number | null;
	/** said at the place of greatest stress */
	peak: { below_mm: number; words: string } | null;
}
