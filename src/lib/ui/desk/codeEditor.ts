import { defaultKeymap, history, historyKeymap } from '@codemirror/commands';
import { markdown } from '@codemirror/lang-markdown';
import { yaml, yamlFrontmatter } from '@codemirror/lang-yaml';
import { HighlightStyle, indentUnit, syntaxHighlighting } from '@codemirror/language';
import { Compartment, EditorState, StateEffect, StateField, type Extension } from '@codemirror/state';
import {
	Decoration,
	drawSelection,
	EditorView,
	gutter,
	GutterMarker,
	highlightActiveLine,
	highlightActiveLineGutter,
	keymap,
	lineNumbers,
	WidgetType,
	type DecorationSet,
} from '@codemirror/view';
import { tags } from '@lezer/highlight';

export interface LineNote {
	/** from 1 */
	line: number;
	severity: 'error' | 'warning';
	/** the word for the severity */
	word: string;
	message: string;
	remedy: string;
	/** language of message and remedy */
	lang: string;
}

export interface CodeEditorOptions {
	/** an element inside a shadow root: there the editor's styles are sheets made by script, which the page's policy lets pass */
	parent: HTMLElement;
	root: ShadowRoot;
	text: string;
	kind: 'yaml' | 'markdown' | 'plain';
	label: string;
	/** ids of elements in the same shadow root that say how it is used */
	describedBy: string;
	readOnly?: boolean;
	/** after each change made by hand */
	onchange?: (text: string) => void;
	onsave?: () => void;
}

export interface CodeEditor {
	/** puts the cursor at the start of a line, from 1, into view and under the keys */
	goTo(line: number): void;
	/** what is said about lines, shown below each */
	note(notes: readonly LineNote[]): void;
	/** replaces all; can be undone by the person who types */
	replace(text: string): void;
	setLabel(label: string): void;
	focus(): void;
	destroy(): void;
}

const setNotes = StateEffect.define<readonly LineNote[]>();

class NoteWidget extends WidgetType {
	readonly #notes: readonly LineNote[];
	constructor(notes: readonly LineNote[]) {
		super();
		this.#notes = notes;
	}
	override eq(other: NoteWidget): boolean {
		return JSON.stringify(other.#notes) === JSON.stringify(this.#notes);
	}
	override toDOM(): HTMLElement {
		const box = document.createElement('div');
		box.className = 'notes';
		for (const { severity, word, message, remedy, lang } of this.#notes) {
			const note = box.appendChild(document.createElement('p'));
			note.className = severity;
			const name = note.appendChild(document.createElement('b'));
			name.textContent = `${word}: `;
			const words = note.appendChild(document.createElement('span'));
			words.lang = lang;
			words.textContent = `${message} ${remedy}`;
		}
		return box;
	}
	override ignoreEvent(): boolean {
		return true;
	}
}

class Mark extends GutterMarker {
	readonly severity: string;
	constructor(severity: string) {
		super();
		this.severity = severity;
	}
	override toDOM(): Node {
		return document.createTextNode(this.severity === 'error' ? '⬣' : '▲');
	}
}
const MARKS = { error: new Mark('error'), warning: new Mark('warning') };

/** Notes keep to their lines while text is typed above them; new ones replace them. */
const noteField = StateField.define<{
	shown: DecorationSet;
	severities: ReadonlyMap<number, 'error' | 'warning'>;
}>({
	create: () => ({ shown: Decoration.none, severities: new Map() }),
	update(before, change) {
		const asked = change.effects.find((effect) => effect.is(setNotes));
		if (!asked) {
			if (!change.docChanged) return before;
			const severities = new Map(
				[...before.severities].map(([at, severity]) => [change.changes.mapPos(at), severity]),
			);
			return { shown: before.shown.map(change.changes), severities };
		}
		const byLine = new Map<number, LineNote[]>();
		for (const note of asked.value as readonly LineNote[]) {
			const line = Math.min(Math.max(1, note.line), change.state.doc.lines);
			byLine.set(line, [...(byLine.get(line) ?? []), note]);
		}
		const severities = new Map<number, 'error' | 'warning'>();
		const ranges = [...byLine]
			.sort(([a], [b]) => a - b)
			.flatMap(([number, notes]) => {
				const line = change.state.doc.line(number);
				const severity = notes.some((note) => note.severity === 'error') ? 'error' : 'warning';
				severities.set(line.from, severity);
				return [
					Decoration.line({ class: `told ${severity}` }).range(line.from),
					Decoration.widget({ widget: new NoteWidget(notes), block: true, side: 1 }).range(line.to),
				];
			});
		return { shown: Decoration.set(ranges), severities };
	},
	provide: (field) => EditorView.decorations.from(field, ({ shown }) => shown),
});

const noteGutter = gutter({
	class: 'signs',
	lineMarker(view, line) {
		const severity = view.state.field(noteField).severities.get(line.from);
		return severity ? MARKS[severity] : null;
	},
	lineMarkerChange: (update) => update.startState.field(noteField) !== update.state.field(noteField),
});

const look = EditorView.theme(
	{
		'&': { color: 'var(--bone)', backgroundColor: 'var(--felt-deep)', fontSize: '1rem', height: '100%' },
		'&.cm-focused': { outline: '3px solid var(--amber)', outlineOffset: '-3px' },
		'.cm-scroller': {
			fontFamily: 'ui-monospace, "DejaVu Sans Mono", Consolas, monospace',
			lineHeight: '1.55',
		},
		'.cm-content': { caretColor: 'var(--amber)', padding: '0.8rem 0' },
		'.cm-line': { padding: '0 0.8rem' },
		'.cm-cursor': { borderLeftColor: 'var(--amber)', borderLeftWidth: '2px' },
		'.cm-gutters': { backgroundColor: 'var(--felt)', color: 'var(--chalk)', border: 'none' },
		'.cm-activeLine': { backgroundColor: '#ffffff0d' },
		'.cm-activeLineGutter': { backgroundColor: '#ffffff1a', color: 'var(--bone)' },
		'&.cm-focused > .cm-scroller > .cm-selectionLayer .cm-selectionBackground, .cm-selectionBackground': {
			backgroundColor: '#6a4f2a',
		},
		'.told.error': { backgroundColor: '#f2876b2e' },
		'.told.warning': { backgroundColor: '#f0ad4e24' },
		'.signs': { width: '1.3rem', color: 'var(--amber)', fontSize: '0.75rem', textAlign: 'center' },
		'.notes': {
			padding: '0.2rem 0.8rem 0.5rem',
			fontFamily: 'var(--face-text)',
			whiteSpace: 'normal',
		},
		'.notes p': {
			margin: '0.2rem 0',
			padding: '0.4rem 0.8rem',
			borderInlineStart: '4px solid var(--amber)',
			borderRadius: '0.3rem',
			backgroundColor: 'var(--felt-high)',
			maxWidth: '60rem',
		},
		'.notes .error': { borderColor: 'var(--rust)' },
		'.notes .error b': { color: 'var(--rust)' },
		'.notes .warning b': { color: 'var(--amber)' },
	},
	{ dark: true },
);

const colours = HighlightStyle.define([
	{ tag: [tags.comment, tags.meta], color: '#b3a48c', fontStyle: 'italic' },
	{ tag: [tags.propertyName, tags.definition(tags.propertyName)], color: '#f0c58a' },
	{ tag: tags.heading, fontWeight: '700', color: '#f0c58a' },
	{ tag: tags.strong, fontWeight: '700' },
	{ tag: tags.emphasis, fontStyle: 'italic' },
]);

/** A plain text editor with line numbers. Tab leaves it; Ctrl+] and Ctrl+[ indent and outdent; Ctrl+S saves. */
export function codeEditor(options: CodeEditorOptions): CodeEditor {
	const { parent, root, text, kind, describedBy, onchange, onsave } = options;
	const labelled = new Compartment();
	const label = (name: string) =>
		EditorView.contentAttributes.of({
			'aria-label': name,
			'aria-describedby': describedBy,
			spellcheck: kind === 'markdown' ? 'true' : 'false',
		});
	const language: Extension =
		kind === 'yaml' ? yaml() : kind === 'markdown' ? yamlFrontmatter({ content: markdown() }) : [];
	let quiet = false;
	const view = new EditorView({
		parent,
		root,
		state: EditorState.create({
			doc: text,
			extensions: [
				lineNumbers(),
				noteField,
				noteGutter,
				history(),
				drawSelection(),
				highlightActiveLine(),
				highlightActiveLineGutter(),
				EditorView.lineWrapping,
				EditorState.tabSize.of(2),
				indentUnit.of('  '),
				language,
				syntaxHighlighting(colours),
				keymap.of([
					{ key: 'Mod-s', preventDefault: true, run: () => (onsave?.(), true) },
					...defaultKeymap,
					...historyKeymap,
				]),
				labelled.of(label(options.label)),
				EditorState.readOnly.of(options.readOnly ?? false),
				EditorView.updateListener.of((update) => {
					if (update.docChanged && !quiet) onchange?.(update.state.doc.toString());
				}),
				look,
			],
		}),
	});
	return {
		goTo(number) {
			const line = view.state.doc.line(Math.min(Math.max(1, number), view.state.doc.lines));
			view.dispatch({
				selection: { anchor: line.from },
				effects: EditorView.scrollIntoView(line.from, { y: 'center' }),
			});
			view.focus();
		},
		note(notes) {
			view.dispatch({ effects: setNotes.of(notes) });
		},
		replace(next) {
			if (next === view.state.doc.toString()) return;
			quiet = true;
			view.dispatch({ changes: { from: 0, to: view.state.doc.length, insert: next } });
			quiet = false;
		},
		setLabel(name) {
			view.dispatch({ effects: labelled.reconfigure(label(name)) });
		},
		focus: () => view.focus(),
		destroy: () => view.destroy(),
	};
}
