/** Signs of the teams: no two alike in colour or in shape, so that either tells them apart. */
export const TEAM_SIGNS = [
	{ shape: 'circle', colour: '#f0ad4e', path: 'M12 3a9 9 0 1 1 0 18 9 9 0 0 1 0-18z' },
	{ shape: 'triangle', colour: '#7cc4ff', path: 'M12 3l10 18H2z' },
	{ shape: 'square', colour: '#ff9c85', path: 'M4 4h16v16H4z' },
	{
		shape: 'star',
		colour: '#c3e27a',
		path: 'M12 2l3 6.600 7 .800-5.200 4.800 1.400 7L12 17.700 5.800 21.200l1.400-7L2 9.400l7-.800z',
	},
	{ shape: 'hexagon', colour: '#d9b3ff', path: 'M7 3.500h10l5 8.500-5 8.500H7L2 12z' },
	{ shape: 'cross', colour: '#f6eddc', path: 'M8.500 2h7v6.500H22v7h-6.500V22h-7v-6.500H2v-7h6.500z' },
] as const;
