import { Anchor, Button, Group, Text, Title } from '@mantine/core';
import type { CatalogueVersion } from '@/api/types';
import { momentWords } from '@/components/time/zone';
import classes from './owner-rules.module.css';

interface Props {
  versions: { files: readonly string[]; versions: readonly CatalogueVersion[] };
  busy: boolean;
  onReturn: (version: number) => void;
}

/** Every version that was ever in force; going back shows what it changes first. */
export const Versions = ({ versions: { files, versions }, busy, onReturn }: Props) => (
  <section aria-labelledby="versions">
    <Title order={2} id="versions">
      Versions
    </Title>
    <ol className={classes.list} aria-label="Versions">
      {versions.map((version) => (
        <li key={version.number} className={classes.policy}>
          <div>
            <strong>{nameOf(version)}</strong>
            {version.inForce && <Text>in force</Text>}
          </div>
          <div>
            {version.madeAt != null && (
              <Text>
                {momentWords(version.madeAt)}, {version.madeBy ?? 'at a start of the program'}
              </Text>
            )}
            {version.why !== '' && <Text c="dimmed">{version.why}</Text>}
            <details className={classes.files}>
              <summary aria-label={`Files of ${nameOf(version)}`}>Files</summary>
              <Group gap="md">
                {files.map((file) => (
                  <Anchor
                    key={file}
                    href={`/api/catalogue/versions/${version.number}/files/${file}`}
                    download={file}
                  >
                    {file}
                  </Anchor>
                ))}
              </Group>
            </details>
          </div>
          {!version.inForce && (
            <Button
              variant="default"
              disabled={busy}
              onClick={() => onReturn(version.number)}
              aria-label={`Look at going back to ${nameOf(version)}`}
            >
              Look at going back
            </Button>
          )}
        </li>
      ))}
    </ol>
  </section>
);

const nameOf = ({ number, own, backTo }: CatalogueVersion) =>
  number === 0
    ? 'The program’s own rules'
    : own
      ? `Version ${number}, the program’s own rules`
      : backTo == null
        ? `Version ${number}`
        : `Version ${number}, as version ${backTo}`;
