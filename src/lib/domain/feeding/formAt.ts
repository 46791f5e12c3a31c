import type { ToothForm } from '../tooth/form';
import { traitsAt } from './crownTraits';
import { formFromTraits } from './formFromTraits';
import type { Position } from './position';
import type { Thresholds } from './thresholds';

/** The tooth that stands for a place in the triangle, at a crown height, mm: always one that can be sculpted; continuous. */
export const formAt = (position: Position, crownHeight_mm: number, thresholds: Thresholds): ToothForm =>
	formFromTraits(traitsAt(position, thresholds), crownHeight_mm, thresholds);
