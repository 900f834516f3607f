import { Anchor, Button, FileButton, Group, Progress, Text, Title } from '@mantine/core';
import { useCallback, useState } from 'react';
import { useImportClients } from '@/api/imports';
import { useImportProgress } from '@/api/live';
import type { ImportReport } from '@/api/types';
import { Refused } from '@/components/states/asked';
import { FilePreview } from './file-preview';
import { ImportOutcome } from './import-outcome';
import { readCsv } from './csv';
import classes from './owner.module.css';

interface Picked {
  file: File;
  head: string[][];
}

const previewRows = 9;

/** Pick, look, try without keeping, then keep: all rows or none. */
export function ImportPage() {
  const [picked, setPicked] = useState<Picked | null>(null);
  const [report, setReport] = useState<ImportReport | null>(null);
  const [sent, setSent] = useState(0);
  const [read, setRead] = useState<{ read: number; of: number } | null>(null);
  const send = useImportClients();
  useImportProgress(useCallback((rows: number, of: number) => setRead({ read: rows, of }), []));

  const pick = async (file: File | null) => {
    if (file === null) return;
    setReport(null);
    send.reset();
    setPicked({ file, head: readCsv(await file.text(), previewRows) });
  };

  const run = (dryRun: boolean) => {
    if (picked === null) return;
    setSent(0);
    setRead(null);
    setReport(null);
    send.mutate({ file: picked.file, dryRun, onSent: setSent }, { onSuccess: setReport });
  };

  const ready = report !== null && report.dryRun && report.refused.length === 0;
  return (
    <div className={classes.steps}>
      <div>
        <Title>Import clients</Title>
        <Text c="dimmed">
          A CSV file with a heading row. It is tried first without keeping anything; then all of it
          is kept, or none.{' '}
          <Anchor href="/api/imports/clients/example" download="clients-example.csv">
            An example file
          </Anchor>{' '}
          shows every column.
        </Text>
      </div>
      <div className={classes.drop}>
        <Group>
          <FileButton accept=".csv,text/csv" onChange={(file) => void pick(file)}>
            {(props) => (
              <Button {...props} variant={picked === null ? 'filled' : 'default'}>
                {picked === null ? 'Choose a file' : 'Choose another file'}
              </Button>
            )}
          </FileButton>
          {picked !== null && (
            <Text>
              <strong>{picked.file.name}</strong>, {Math.ceil(picked.file.size / 1024)} kB
            </Text>
          )}
        </Group>
      </div>
      {picked !== null && <FilePreview rows={picked.head} />}
      {picked !== null && (
        <Group>
          <Button
            loading={send.isPending && send.variables.dryRun}
            disabled={send.isPending}
            variant={ready ? 'default' : 'filled'}
            onClick={() => run(true)}
          >
            Try it without keeping
          </Button>
          <Button
            loading={send.isPending && !send.variables.dryRun}
            disabled={!ready || send.isPending}
            onClick={() => run(false)}
          >
            Import {ready ? `${report.rowsAccepted} clients` : ''}
          </Button>
        </Group>
      )}
      {send.isPending && <Sending sent={sent} read={read} />}
      <Refused error={send.error} />
      {report !== null && <ImportOutcome report={report} />}
    </div>
  );
}

interface SendingProps {
  sent: number;
  read: { read: number; of: number } | null;
}

function Sending({ sent, read }: SendingProps) {
  const share = read === null ? sent : read.read / Math.max(read.of, 1);
  return (
    <div>
      <Text id="sending">
        {read === null
          ? `Sending the file, ${Math.round(sent * 100)} %`
          : `Reading row ${read.read} of ${read.of}`}
      </Text>
      <Progress value={share * 100} size="lg" aria-labelledby="sending" />
    </div>
  );
}
