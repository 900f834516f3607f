import { Anchor, Text, Title } from '@mantine/core';
import { useId } from 'react';
import type { HeldRecord } from '@/api/types';
import classes from './record.module.css';

interface Props {
  record: HeldRecord;
  /** Where the file of a letter is opened. */
  fileOf: (letterId: number) => string;
}

type Section = HeldRecord['sections'][number];

/** What is held, subject by subject, for the screen and for paper. */
export function RecordView({ record, fileOf }: Props) {
  // Several records may stand on one page.
  const id = useId();
  return record.sections.map((section) => (
    <section key={section.code} className={classes.section} aria-labelledby={id + section.code}>
      <Title order={2} id={id + section.code}>
        {section.title}
      </Title>
      {section.says !== '' && <Text c="dimmed">{section.says}</Text>}
      {section.entries.length === 0 ? (
        <Text mt="xs">Nothing is held here.</Text>
      ) : (
        section.entries.map((entry, at) => (
          // Nothing is added to or taken from a record that was made.
          <Entry key={at} entry={entry} fileOf={fileOf} />
        ))
      )}
    </section>
  ));
}

const Entry = ({
  entry,
  fileOf,
}: {
  entry: Section['entries'][number];
  fileOf: Props['fileOf'];
}) => (
  <div className={classes.entry}>
    {entry.title !== '' && <Text fw={600}>{entry.title}</Text>}
    <dl className={classes.facts}>
      {entry.facts.map(({ label, text }, at) => (
        <Fact key={at} label={label} text={text} />
      ))}
    </dl>
    {entry.letterId != null && (
      <Anchor href={fileOf(entry.letterId)} target="_blank" rel="noopener">
        Open the letter’s file
      </Anchor>
    )}
  </div>
);

const Fact = ({ label, text }: { label: string; text: string }) => (
  <>
    <dt>{label}</dt>
    <dd>{text}</dd>
  </>
);
