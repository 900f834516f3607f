import { Text, Title } from '@mantine/core';
import { useMe } from '@/api/session';
import { RecordOf } from '@/components/record/record-of';
import { Empty } from '@/components/states/asked';
import { AskErasure } from './ask-erasure';
import classes from './my.module.css';

/** All that the studio holds about her, and the way to have it erased. */
export function RecordPage() {
  const { clientId } = useMe();
  if (clientId == null)
    return (
      <Empty title="This account has no client’s page">The front desk can join the two.</Empty>
    );
  return (
    <div className={classes.page}>
      <Title>What is held about you</Title>
      <Text c="dimmed">
        Everything the studio’s program holds about you, in words. Only you and the owner can open
        this page, and each time is noted.
      </Text>
      <RecordOf clientId={clientId} />
      <AskErasure clientId={clientId} />
    </div>
  );
}
