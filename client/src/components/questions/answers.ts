import type { Answer, AskedQuestion, QuestionSection } from '@/api/types';

/** By code of the question. A question that is not in it is open: nothing is ever answered no by itself. */
export type Answers = Readonly<Record<string, Answer>>;

export interface Step {
  section: QuestionSection;
  questions: readonly AskedQuestion[];
}

/** One step for each section, in the order in which they are asked. */
export function stepsOf(questions: readonly AskedQuestion[]): Step[] {
  const sections = [...new Set(questions.map(({ section }) => section))];
  return sections.map((section) => ({
    section,
    questions: questions.filter((question) => question.section === section),
  }));
}

/** Those that must be answered and are not yet. Own words may be left out. */
export const openIn = (questions: readonly AskedQuestion[], answers: Answers) =>
  questions.filter(({ code, kind }) => kind !== 'text' && answers[code] === undefined);

/** Where to go on: the first step with an open question; the last when there is none. */
export function stepToGoOn(steps: readonly Step[], answers: Answers) {
  const first = steps.findIndex(({ questions }) => openIn(questions, answers).length > 0);
  return first === -1 ? Math.max(0, steps.length - 1) : first;
}

/** Answers one question, or opens it again. */
export function answered(answers: Answers, code: string, answer: Answer | undefined): Answers {
  const others = Object.entries(answers).filter(([other]) => other !== code);
  return Object.fromEntries(answer === undefined ? others : [...others, [code, answer]]);
}

/** What she says with one press: no to every yes-no question here that is still open, and to no other. */
export const noneOfTheRest = (questions: readonly AskedQuestion[], answers: Answers): Answers => ({
  ...answers,
  ...Object.fromEntries(
    openIn(questions, answers)
      .filter(({ kind }) => kind === 'yesNo')
      .map(({ code }) => [code, { value: 'no' }]),
  ),
});

/** When the questions have changed: the answers to those that are asked in the same words. */
export function carriedOver(
  answers: Answers,
  before: readonly AskedQuestion[],
  now: readonly AskedQuestion[],
): Answers {
  const same = new Set(
    now
      .filter(({ code, kind, asks }) =>
        before.some((old) => old.code === code && old.kind === kind && old.asks === asks),
      )
      .map(({ code }) => code),
  );
  return Object.fromEntries(Object.entries(answers).filter(([code]) => same.has(code)));
}

/** She agrees that they are kept. */
export const areAgreed = (questions: readonly AskedQuestion[], answers: Answers) =>
  questions.every(({ code, kind }) => kind !== 'agree' || answers[code] !== undefined);

/** The question a refusal is about, by its field `answers.<code>`. */
export function questionOf(fields: Readonly<Record<string, string>>) {
  const field = Object.keys(fields).find((name) => name.startsWith('answers.'));
  return field?.slice('answers.'.length);
}
