import { count as en } from './en/voice';
import { count as es } from './es/voice';
import { count as fr } from './fr/voice';

/** The words of the check's own report, round the problems. */
export interface ReportWords {
	/** in place of a file's name, for the folder itself */
	folder: string;
	error: string;
	warning: string;
	none: string;
	total(errors: number, warnings: number): string;
}

const REPORT: Readonly<Record<string, ReportWords>> = {
	en: {
		folder: '(the folder)',
		error: 'error',
		warning: 'warning',
		none: 'No problems found.',
		total: (errors, warnings) =>
			`${en(errors, 'error', 'errors')}, ${en(warnings, 'warning', 'warnings')}.${errors > 0 ? ' What has an error is not shown until it is put right.' : ''}`,
	},
	fr: {
		folder: '(le dossier)',
		error: 'erreur',
		warning: 'conseil',
		none: 'Aucun problème trouvé.',
		total: (errors, warnings) =>
			`${fr(errors, 'erreur', 'erreurs')}, ${fr(warnings, 'conseil', 'conseils')}.${errors > 0 ? ' Ce qui a une erreur n’est pas montré avant d’être corrigé.' : ''}`,
	},
	es: {
		folder: '(la carpeta)',
		error: 'error',
		warning: 'consejo',
		none: 'No se encontraron problemas.',
		total: (errors, warnings) =>
			`${es(errors, 'error', 'errores')}, ${es(warnings, 'consejo', 'consejos')}.${errors > 0 ? ' Lo que tiene un error no se muestra hasta que se corrige.' : ''}`,
	},
};

/** English for a language that is none of ours. */
export const reportWords = (language: string): ReportWords => REPORT[language] ?? REPORT.en;
