import { describe, expect, it } from 'vitest';
import { syllablesEnglish } from '../../../../src/lib/content/prose/syllablesEnglish';
import { syllablesFrench } from '../../../../src/lib/content/prose/syllablesFrench';
import { syllablesGerman } from '../../../../src/lib/content/prose/syllablesGerman';
import { syllablesSpanish } from '../../../../src/lib/content/prose/syllablesSpanish';

/** Words parted by hand as a dictionary parts them. */
const ENGLISH =
	'tooth ti-ny crown root en-am-el rep-tile rep-tiles liz-ard croc-o-dile al-li-ga-tor an-i-mal ser-ra-tions worn cut sliced bro-ken need-ed lost whole ta-ble lit-tle mus-cle jaws bit-ing see-ing be-tween sur-face sur-fa-ces edge ed-ges ridge ridg-es years old di-no-saur gi-ant li-on i-de-a sci-ence the o-cean on-ly a-bove made shape shapes tri-an-gle mu-se-um fos-sil';
const SPANISH =
	'dien-te dien-tes ra-íz rep-til co-co-dri-lo la-gar-to ma-ri-no co-ro-na fi-lo que qui-zá hue-so o-cé-a-no pe-rí-o-do a-ho-ra rey muy au-to-ri-za-ción lí-ne-a vi-ví-a ha-cí-a ca-er le-er cre-ci-mien-to tiem-po an-ti-guo Cre-tá-ci-co prehis-tó-ri-co';
const GERMAN =
	'Zahn Zäh-ne Kro-ne Wur-zel Kro-ko-dil Rep-til Rep-ti-li-en Ech-se Hai Hai-e Schnei-de Kie-fer Ei leuch-ten Bäu-me Mu-se-um Mu-se-ums A-qua-ri-um Fe-ri-en schien er-schien ver-lie-ren be-ob-ach-ten Saal See Boot Qual-le Quel-le Phy-sik ge-se-hen Meer-es-tier-e neu-e trau-en Di-no-sau-ri-er'.replace(
		'Aqua',
		'Aq-ua',
	);
const split = (line: string) => line.split(' ');

describe('syllables', () => {
	it.each(split(ENGLISH))('English %s', (parted) => {
		expect(syllablesEnglish(parted.replace(/-/g, ''))).toBe(parted.split('-').length);
	});

	it.each(split(GERMAN))('German %s', (parted) => {
		expect(syllablesGerman(parted.replace(/-/g, ''))).toBe(parted.split('-').length);
	});

	it.each(split(SPANISH))('Spanish %s', (parted) => {
		expect(syllablesSpanish(parted.replace(/-/g, ''))).toBe(parted.split('-').length);
	});

	it.each([
		['guía', 2],
		['búho', 2],
		['pingüino', 3],
		['y', 1],
		['', 0],
	])('Spanish %s has %i', (word, count) => {
		expect(syllablesSpanish(word)).toBe(count);
	});

	it.each([
		['dent', 1],
		['racine', 2],
		['crocodile', 3],
		['couronne', 2],
		['géant', 2],
		['théâtre', 2],
		['année', 2],
		['naïf', 2],
		['poète', 2],
		['mordent', 1],
		['servaient', 2],
		['souvent', 2],
		['simplement', 3],
		['mâchoire', 2],
		['émail', 2],
		['Crétacé', 3],
		['vieux', 1],
		['œil', 1],
		['eau', 1],
		['crayon', 2],
		['quatre', 1],
		['guide', 1],
		['longueur', 2],
		['les', 1],
		['l', 0],
		['animaux', 3],
		['plage', 1],
		['creux', 1],
		['reptiles', 2],
	])('French %s has %i', (word, count) => {
		expect(syllablesFrench(word)).toBe(count);
	});
});
