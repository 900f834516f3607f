import { Anchor, Button, FileButton, Group, Stack, Text, TextInput, Title } from '@mantine/core';
import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { catalogueQueries } from '@/api/catalogue';
import { useNewRules } from '@/api/rules';
import type { CatalogueFile, CatalogueReport } from '@/api/types';
import { Asked, Lines, Refused } from '@/components/states/asked';
import { tell } from '@/components/states/told';
import { RulesOutcome } from './rules-outcome';
import { Versions } from './versions';
import classes from './owner-rules.module.css';

/** What is being tried: files, or an earlier version by its number. */
type Tried = CatalogueFile[] | number;

/** Download a file, change it, try it, see whom it concerns, put it in force; and back again. */
export function RulesImportPage() {
  const versions = useQuery(catalogueQueries.versions());
  const [tried, setTried] = useState<Tried | null>(null);
  const [why, setWhy] = useState('');
  const [report, setReport] = useState<CatalogueReport | null>(null);
  const send = useNewRules();

  const attempt = (files: Tried) => {
    setTried(files);
    setReport(null);
    send.mutate({ files, why: '', basedOn: null, dryRun: true }, { onSuccess: setReport });
  };
  const pick = async (files: File[]) => {
    if (files.length === 0) return;
    attempt(
      await Promise.all(files.map(async (file) => ({ name: file.name, text: await file.text() }))),
    );
  };
  const keep = () => {
    if (tried === null || report === null) return;
    send.mutate(
      { files: tried, why, basedOn: report.basedOn, dryRun: false },
      {
        onSuccess: (kept) => {
          setReport(kept);
          if (kept.version == null) return;
          setTried(null);
          setWhy('');
          tell(`Version ${kept.version} of the rules is in force.`);
        },
      },
    );
  };

  return (
    <div className={classes.steps}>
      <Text c="dimmed" maw="46rem">
        Download a file, change it in a spreadsheet, save it as CSV with commas and choose it here.
        It is tried first: every error is named with its line, and you see whose bookings it
        changes. Nothing is in force before you say so, and every version stays to go back to.
      </Text>
      <section aria-labelledby="files">
        <Title order={2} id="files">
          Files in force
        </Title>
        <Asked query={versions} waiting={<Lines count={2} />}>
          {({ files, inForce, rowsNotAsOwn }) => (
            <>
              <Text mb="xs">{standing(inForce, rowsNotAsOwn)}</Text>
              <Group gap="md">
                {files.map((file) => (
                  <Anchor key={file} href={`/api/catalogue/files/${file}`} download={file}>
                    {file}
                  </Anchor>
                ))}
              </Group>
            </>
          )}
        </Asked>
      </section>
      <div className={classes.drop}>
        <FileButton
          accept=".csv,text/csv"
          multiple
          onChange={(files) => void pick(files)}
          key={tried === null ? 'none' : 'some'}
        >
          {(props) => (
            <Button {...props} loading={send.isPending && tried !== null && report === null}>
              Choose changed files
            </Button>
          )}
        </FileButton>
      </div>
      <Refused error={send.error} />
      {report && (
        <RulesOutcome report={report} version={typeof tried === 'number' ? tried : undefined}>
          {report.dryRun && report.canBeKept && (
            <Stack gap="sm" mt="md">
              <TextInput
                label="Why"
                description="Kept with the version, for those who ask later"
                maxLength={300}
                value={why}
                onChange={(event) => setWhy(event.currentTarget.value)}
              />
              <Group>
                <Button loading={send.isPending} onClick={keep}>
                  Put in force
                </Button>
                <Button
                  variant="default"
                  disabled={send.isPending}
                  onClick={() => {
                    setTried(null);
                    setReport(null);
                    send.reset();
                  }}
                >
                  Leave it
                </Button>
              </Group>
            </Stack>
          )}
        </RulesOutcome>
      )}
      <Asked query={versions} waiting={<Lines count={3} />}>
        {(list) => <Versions versions={list} busy={send.isPending} onReturn={attempt} />}
      </Asked>
    </div>
  );
}

const standing = (inForce: number, rows: number) =>
  inForce === 0
    ? 'The program’s own rules are in force.'
    : rows === 0
      ? `Version ${inForce} is in force, the same as the program’s own rules.`
      : `Version ${inForce} is in force; ${rows === 1 ? '1 row differs' : `${rows} rows differ`} from the program’s own rules.`;
