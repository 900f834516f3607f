import { Alert, Text, Title } from '@mantine/core';
import type { ImportReport } from '@/api/types';
import { fullDate } from '@/components/time/days';
import classes from './owner.module.css';

export function ImportOutcome({ report }: { report: ImportReport }) {
  const { dryRun, rowsRead, rowsAccepted, refused, preview } = report;
  return (
    <section aria-labelledby="outcome" role="status">
      <Title order={2} id="outcome" mb="xs">
        {refused.length > 0
          ? `${refused.length} things to put right`
          : dryRun
            ? 'Every row can be read'
            : `${rowsAccepted} clients imported`}
      </Title>
      <Alert color={refused.length > 0 ? 'brick' : 'leaf'} variant="light" mb="md">
        {rowsRead} rows read, {rowsAccepted} accepted.{' '}
        {refused.length > 0
          ? 'Nothing was kept. Put these right in the file and choose it again.'
          : dryRun
            ? 'Nothing was kept yet.'
            : 'They can be found by name now.'}
      </Alert>
      {refused.length > 0 && (
        <div className={classes.scroll}>
          <table className={classes.table} aria-label="Refused rows">
            <thead>
              <tr>
                <th scope="col">Line</th>
                <th scope="col">Column</th>
                <th scope="col">Why</th>
              </tr>
            </thead>
            <tbody>
              {refused.map(({ line, column, reason }) => (
                <tr key={`${line}${column}${reason}`}>
                  <td>{line}</td>
                  <td>{column}</td>
                  <td>{reason}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </div>
      )}
      {refused.length === 0 && preview.length > 0 && (
        <>
          <Text fw={600}>As they were understood</Text>
          <div className={classes.scroll}>
            <table className={classes.table} aria-label="Clients as read">
              <thead>
                <tr>
                  <th scope="col">Line</th>
                  <th scope="col">Name</th>
                  <th scope="col">Called</th>
                  <th scope="col">Stage today</th>
                  <th scope="col">Due</th>
                </tr>
              </thead>
              <tbody>
                {preview.map(({ line, name, called, stageName, dueDate }) => (
                  <tr key={line}>
                    <td>{line}</td>
                    <td>{name}</td>
                    <td>{called}</td>
                    <td>{stageName}</td>
                    <td>{dueDate != null && fullDate(dueDate)}</td>
                  </tr>
                ))}
              </tbody>
            </table>
          </div>
        </>
      )}
    </section>
  );
}
