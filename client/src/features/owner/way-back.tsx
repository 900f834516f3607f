import { Button, Radio, Select, Stack, Text, Title } from '@mantine/core';
import { useState } from 'react';
import { useOpenWayBack } from '@/api/clients';
import { isGiven } from '@/api/dating';
import { Problem } from '@/api/problem';
import type { BirthMode, ClientCard } from '@/api/types';
import { birthModes, broughtBackWords } from '@/components/forms/birth-modes';
import { emptyDraft, evidenceOf } from '@/components/forms/dating-draft';
import { DatingFields } from '@/components/forms/dating-fields';
import { DayInput } from '@/components/forms/day-input';
import { Refused } from '@/components/states/asked';
import { tell } from '@/components/states/told';

type How = 'pregnant' | 'born' | 'mistake';

/** After a loss her page is closed to everybody else; here it is opened when she comes again. */
export function WayBack({ her, today }: { her: ClientCard; today: string }) {
  const [how, setHow] = useState<How | null>(null);
  const [draft, setDraft] = useState(emptyDraft);
  const [bornOn, setBornOn] = useState<string | null>(null);
  const [mode, setMode] = useState<BirthMode>('unknown');
  const open = useOpenWayBack(her.id);
  const evidence = evidenceOf(draft);
  const fields = open.error instanceof Problem ? open.error.fields : {};
  const ready =
    how === 'mistake' ||
    (how === 'born' && bornOn !== null) ||
    (how === 'pregnant' && isGiven(evidence));
  return (
    <section aria-labelledby="way-back">
      <Title order={2} id="way-back" mb="xs">
        When she comes again
      </Title>
      <Text mb="md">
        Only you and she herself see this page. Nobody at the desk, no instructor and no list has
        her, and nothing is sent to her. When she would like to come again, open the way back here;
        until then leave it.
      </Text>
      <form
        onSubmit={(event) => {
          event.preventDefault();
          if (how === null) return;
          void open
            .mutateAsync({
              dating: how === 'pregnant' ? evidence : null,
              bornOn: how === 'born' ? bornOn : null,
              birthMode: how === 'born' ? mode : null,
              babies: null,
              setByMistake: how === 'mistake',
            })
            .then(
              (back) =>
                tell(how === 'mistake' ? broughtBackWords(back) : 'Her page is open again.'),
              () => undefined,
            );
        }}
      >
        <Stack>
          <Refused error={open.error} />
          <Radio.Group label="She comes" value={how} onChange={(value) => setHow(value)}>
            <Stack gap="xs" mt="xs">
              <Radio value="pregnant" label="with a new pregnancy" />
              <Radio value="born" label="in the time after a birth or after the pregnancy ended" />
              <Radio value="mistake" label="There was no loss: it was set by mistake" />
            </Stack>
          </Radio.Group>
          {how === 'pregnant' && (
            <DatingFields draft={draft} onChange={setDraft} errors={fields} today={today} />
          )}
          {how === 'born' && (
            <>
              <DayInput
                label="Day from which her recovery counts"
                description="Of the birth, or of the end of the pregnancy."
                maxDate={today}
                value={bornOn}
                onChange={setBornOn}
                error={fields.bornOn}
              />
              <Select
                label="How she gave birth"
                data={[...birthModes]}
                value={mode}
                onChange={(value) => setMode(value ?? 'unknown')}
                error={fields.birthMode}
              />
            </>
          )}
          {how !== null && (
            <Text>
              {how === 'mistake'
                ? 'Everything is as it was, and what had been booked is booked again where there is still a place.'
                : 'She is asked the health questions afresh, in her own time, and for a letter written from now on; before that nothing can be booked. Her earlier answers and letters stay on her record and count no more. What held only for that pregnancy has ended with it; the rest stands until she answers.'}
            </Text>
          )}
          {ready && (
            <div>
              <Button type="submit" loading={open.isPending}>
                Open her page again
              </Button>
            </div>
          )}
        </Stack>
      </form>
    </section>
  );
}
