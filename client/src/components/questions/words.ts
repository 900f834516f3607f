import type { QuestionSection } from '@/api/types';

export const sectionTitles: Record<QuestionSection, string> = {
  agreement: 'Before you begin',
  dates: 'Your dates',
  signs: 'Today',
  before: 'Until now',
  health: 'Your health',
  now: 'How your body is now',
  emergency: 'In an emergency',
};

/** Above a list to tick. */
export const sectionAsks: Partial<Record<QuestionSection, string>> = {
  signs: 'Do you have any of these today? Tick what you have.',
  before: 'Tick what is so.',
  health: 'Tick what is so. You need not explain anything here.',
  now: 'Tick what is so for you now.',
};

export const openWords = (count: number) =>
  count === 1 ? '1 question here is still open.' : `${count} questions here are still open.`;
