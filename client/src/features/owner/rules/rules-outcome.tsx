import { Alert, Text, Title } from '@mantine/core';
import type { ReactNode } from 'react';
import type { CatalogueReport } from '@/api/types';
import { Some } from '@/components/rules/some';
import { ConsequencesList } from './consequences';
import classes from './owner-rules.module.css';

type RowChange = CatalogueReport['rows'][number];

interface Props {
  report: CatalogueReport;
  /** The version that is being gone back to, when it is one. */
  version?: number;
  children?: ReactNode;
}

export function RulesOutcome({ report, version, children }: Props) {
  const { faults, inUse, rows, mind, files, bookings } = report;
  const wrong = faults.length + inUse.length;
  return (
    <section aria-labelledby="outcome">
      <Title order={2} id="outcome" mb="xs">
        {headingOf(report, version)}
      </Title>
      <Alert color={wrong > 0 ? 'brick' : 'leaf'} variant="light" mb="md" role="status">
        {messageOf(report)}
      </Alert>
      {faults.length > 0 && (
        <div className={classes.scroll} role="region" aria-label="Errors" tabIndex={0}>
          <table className={classes.table}>
            <thead>
              <tr>
                <th scope="col">File</th>
                <th scope="col">Line</th>
                <th scope="col">What is wrong</th>
              </tr>
            </thead>
            <tbody>
              {faults.map(({ file, line, text }) => (
                <tr key={`${file}${line ?? ''}${text}`}>
                  <td>{file}</td>
                  <td>{line}</td>
                  <td>{text}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </div>
      )}
      {inUse.length > 0 && (
        <ul className={classes.list} aria-label="In use">
          {inUse.map(({ file, code, text }) => (
            <li key={code} className={classes.row}>
              <strong>{code}</strong>
              <Text size="sm" c="dimmed">
                {file}
              </Text>
              <Text>{text}</Text>
            </li>
          ))}
        </ul>
      )}
      {mind.length > 0 && (
        <Alert color="amber" variant="light" mb="md" title="Good to know">
          {mind.map((text) => (
            <Text key={text}>{text}</Text>
          ))}
        </Alert>
      )}
      {rows.length > 0 && (
        <>
          <Title order={3} mt="md">
            Rows that differ
          </Title>
          <Some of={files.join(' ')} all={rows} what="rows" most={30}>
            {(some) => (
              <ul className={classes.list} aria-label="Rows that differ">
                {some.map((row) => (
                  <OneRow key={`${row.file}${row.key}`} row={row} />
                ))}
              </ul>
            )}
          </Some>
        </>
      )}
      {bookings && (
        <>
          <Title order={3} mt="md">
            Whom it concerns
          </Title>
          <ConsequencesList consequences={bookings} />
        </>
      )}
      {children}
    </section>
  );
}

const kindWords: Record<RowChange['kind'], string> = {
  added: 'new',
  removed: 'gone',
  changed: 'changed',
};

const OneRow = ({ row: { file, key, kind, cells } }: { row: RowChange }) => (
  <li className={classes.row}>
    <div>
      <strong className={classes.key}>{key}</strong> {kindWords[kind]}
    </div>
    <Text size="sm" c="dimmed">
      {file}
    </Text>
    <dl className={classes.cells}>
      {cells.map(({ column, from, to }) => (
        <div key={column}>
          <dt>{column}</dt>
          <dd>
            {kind !== 'added' && <del>{from === '' ? 'empty' : from}</del>}
            {kind === 'changed' && ' '}
            {kind !== 'removed' && <ins>{to === '' ? 'empty' : to}</ins>}
          </dd>
        </div>
      ))}
    </dl>
  </li>
);

const headingOf = ({ faults, inUse, version, files }: CatalogueReport, back?: number) => {
  const wrong = faults.length + inUse.length;
  if (wrong > 0) return wrong === 1 ? '1 thing to put right' : `${wrong} things to put right`;
  if (version != null) return `Version ${version} is in force`;
  if (files.length === 0) return 'Nothing differs';
  if (back === undefined) return 'The files can be used';
  return back === 0 ? 'Back to the program’s own rules' : `Back to version ${back}`;
};

const messageOf = ({ faults, inUse, version, files, rows }: CatalogueReport) => {
  if (faults.length > 0)
    return 'Nothing was kept. Put these right in the files and choose them again, all together.';
  if (inUse.length > 0) return 'Nothing was kept: it would take away what is in use.';
  const changed = `${rows.length === 1 ? '1 row differs' : `${rows.length} rows differ`} in ${files.join(', ')}.`;
  if (version != null) return `${changed} Everything that is asked from now on goes by it.`;
  if (files.length === 0) return 'These are the rules that are in force already.';
  return `${changed} Nothing was kept yet.`;
};
