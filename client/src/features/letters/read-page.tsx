import { Group, Text, Title } from '@mantine/core';
import { useQuery } from '@tanstack/react-query';
import { letterQueries } from '@/api/letters';
import { LetterFacts } from '@/components/letters/letter-facts';
import { WithdrawLetter } from '@/components/letters/withdraw-letter';
import { Asked, Empty, Lines } from '@/components/states/asked';
import { Go } from '@/components/states/go';
import { SafetyNote } from '@/components/states/safety-note';
import classes from './letters.module.css';

/** What was read last, so that a mistake can be found and taken back. */
export function ReadPage() {
  const read = useQuery(letterQueries.read());
  return (
    <>
      <Title>Read lately</Title>
      <Text c="dimmed" mb="lg" maw="46rem">
        The last hundred letters that were read. If something was noted wrongly, withdraw the letter
        and read it again from paper or a new file.
      </Text>
      <Asked query={read} waiting={<Lines count={5} height={72} />}>
        {(list) =>
          list.length === 0 ? (
            <Empty title="No letter has been read yet" />
          ) : (
            <ul className={classes.read}>
              {list.map((letter) => (
                <li key={letter.id}>
                  <Group justify="space-between" align="flex-start" wrap="nowrap">
                    <Go
                      to="/letters/people/$clientId"
                      params={{ clientId: String(letter.clientId) }}
                      fw={600}
                      c="inherit"
                    >
                      {letter.name}
                    </Go>
                    <WithdrawLetter letter={letter} />
                  </Group>
                  <LetterFacts letter={letter} />
                </li>
              ))}
            </ul>
          )
        }
      </Asked>
      <SafetyNote />
    </>
  );
}
