import { Text, Title } from '@mantine/core';
import classes from './owner.module.css';

/** The first rows as they stand in the file, before anything is sent. */
export function FilePreview({ rows: [heads = [], ...rows] }: { rows: string[][] }) {
  return (
    <section aria-labelledby="preview">
      <Title order={2} id="preview">
        The first rows
      </Title>
      <Text c="dimmed" mb="xs">
        {heads.length} columns. Nothing has been sent yet.
      </Text>
      <div
        role="region"
        className={classes.scroll}
        tabIndex={0}
        aria-label="First rows of the file"
      >
        <table className={`${classes.table} ${classes.file}`}>
          <thead>
            <tr>
              {heads.map((head, column) => (
                <th key={column} scope="col">
                  {head}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {rows.map((row, line) => (
              <tr key={line}>
                {heads.map((_, column) => (
                  <td key={column}>{row[column]}</td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </section>
  );
}
