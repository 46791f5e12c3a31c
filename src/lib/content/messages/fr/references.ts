import type { REFERENCES as EN } from '../en/references';
import { say, short } from '../parts';
import { didYouMean, fr, num, tongue } from './voice';

/** One file and another. */
export const REFERENCES: typeof EN = {
	'unknown-group': (d) =>
		say(
			fr`Il n’y a pas de groupe « ${short(d.found)} » : groups/${short(d.found)}.yaml n’existe pas.${didYouMean(d.meant)}`,
			d.meant
				? fr`Écrivez group: ${d.meant}`
				: fr`Écrivez le nom d’un fichier de groups/, ou créez ce fichier.`,
		),
	'group-left-out': (d) =>
		say(
			fr`Le groupe « ${d.found} » a lui-même des problèmes et n’est pas montré ; ce spécimen ne l’est donc pas non plus.`,
			fr`Corrigez les problèmes indiqués pour groups/${d.found}.`,
		),
	'unknown-bed': (d) =>
		say(
			fr`Il n’y a pas de couche « ${short(d.found)} » : beds/${short(d.found)}.yaml n’existe pas.${didYouMean(d.meant)}`,
			d.meant ? fr`Écrivez bed: ${d.meant}` : fr`Écrivez le nom d’un fichier de beds/, ou créez ce fichier.`,
		),
	'bed-left-out': (d) =>
		say(
			fr`La couche « ${d.found} » a elle-même des problèmes et n’est pas montrée ; ce spécimen ne l’est donc pas non plus.`,
			fr`Corrigez les problèmes indiqués pour beds/${d.found}.`,
		),
	'unknown-source': (d) =>
		say(
			fr`Il n’y a pas de source « ${short(d.found)} » dans sources.yaml.${didYouMean(d.meant)}`,
			d.meant
				? fr`Écrivez ${d.meant}`
				: fr`Ajoutez-la à sources.yaml, ou écrivez un identifiant qui s’y trouve.`,
		),
	'source-left-out': (d) =>
		say(
			fr`La source « ${short(d.found)} » ne peut pas être montrée, car sources.yaml a lui-même des problèmes.`,
			fr`Corrigez les problèmes indiqués pour sources.yaml.`,
		),
	'duplicate-accession': (d) =>
		say(
			fr`Le numéro d’inventaire ${d.found} appartient déjà à ${d.file} ; ce spécimen n’est donc pas montré.`,
			fr`Donnez à l’un des deux son propre numéro, par exemple accession: SKM 0105`,
		),
	'duplicate-id': (d) =>
		say(
			fr`« ${d.found} » se trouve ici une deuxième fois ; il est déjà à la ligne ${num(d.firstLine)}.`,
			fr`Donnez à chacun le sien, par exemple ${d.found}-2, ou supprimez l’un des deux.`,
		),
	'bed-for-living': (d) =>
		say(
			fr`${d.group} vit aujourd’hui : ses dents n’ont pas de couche.`,
			fr`Supprimez la ligne qui commence par bed:`,
		),
	'bed-missing': (d) =>
		say(
			fr`${d.group} a disparu, mais aucune couche n’est donnée ; l’écran ne dira pas de quand date ce spécimen.`,
			fr`Ajoutez une ligne comme bed: upper-marl`,
		),
	'missing-scan': (d) =>
		say(
			fr`Le scan ${short(d.found)} n’est pas dans ${d.folder}.${didYouMean(d.meant)}`,
			d.meant ? fr`Écrivez file: ${d.meant}` : fr`Mettez le scan dans ${d.folder}, ou corrigez son nom.`,
		),
	'scan-ending': (d) =>
		say(
			fr`« ${short(d.found)} » n’est pas une sorte de scan qui peut être lue : son nom doit finir par .glb, .stl, .ply ou .obj.`,
			fr`Enregistrez le scan sous l’une de ces formes, par exemple file: ${d.example}`,
		),
	'scan-not-in-folder': (d) =>
		say(
			fr`« ${short(d.found)} » n’est pas un simple nom de fichier ; le scan se trouve à côté de specimen.yaml.`,
			fr`Copiez le scan dans le dossier du spécimen et écrivez file: ${d.name}`,
		),
	'empty-scan': (d) =>
		say(
			fr`Le scan ${d.found} ne contient pas un seul octet.`,
			fr`Copiez-le de nouveau depuis l’endroit où il a été fait.`,
		),
	'shape-missing': () =>
		say(
			fr`La forme n’est ni un modèle ni un scan ; il faut l’un des deux.`,
			fr`Ajoutez sous shape: soit model: avec ses nombres, soit scan: { file: scan.stl, units: mm }`,
		),
	'shape-both': () =>
		say(
			fr`La forme a à la fois un modèle et un scan ; un seul peut être montré.`,
			fr`Supprimez l’un des deux, ou mettez un # devant chacune de ses lignes.`,
		),
	'feature-without-name': (d) =>
		say(
			fr`L’endroit « ${d.id} » de specimen.yaml n’a pas de nom ici ; il n’est donc pas marqué sur la dent.`,
			fr`Ajoutez sous features: ${d.id}: ${d.shown}`,
		),
	'feature-not-translated': (d) =>
		say(
			fr`L’endroit « ${d.id} » n’a pas de nom ici ; les visiteurs le voient en ${tongue(d.language)}.`,
			fr`Ajoutez sa traduction sous features: ${d.id}: ${d.shown}`,
		),
	'name-without-feature': (d) =>
		say(
			fr`specimen.yaml ne marque pas d’endroit « ${short(d.id)} » ; ce nom n’est donc pas montré.${didYouMean(d.meant)}`,
			d.meant
				? fr`Écrivez ${d.meant} à la place de ${short(d.id)}.`
				: fr`Supprimez la ligne, ou ajoutez à specimen.yaml : - { id: ${short(d.id)}, at: 0.6, where: distal }`,
		),
};
