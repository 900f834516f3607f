import {
  Alert,
  Button,
  Checkbox,
  Group,
  Modal,
  NumberInput,
  Radio,
  Stack,
  Text,
  TextInput,
} from '@mantine/core';
import { useState } from 'react';
import { useChoosePolicy, usePreviewPolicy } from '@/api/rules';
import type { Policy } from '@/api/types';
import { Refused } from '@/components/states/asked';
import { tell } from '@/components/states/told';
import { ConsequencesList } from './consequences';
import { nameOf, valuesOf } from './policy-values';

interface Props {
  policy: Policy;
  onClose: () => void;
}

const number = 'number';

/** Choose, see whom it concerns, then save; what is less cautious than the default is confirmed. */
export function PolicyModal({ policy, onClose }: Props) {
  const { code, value: now, default: standard, allowed, means } = policy;
  const [value, setValue] = useState(now);
  const [why, setWhy] = useState('');
  const [confirmed, setConfirmed] = useState(false);
  const preview = usePreviewPolicy(code);
  const choose = useChoosePolicy(code);
  const seen = preview.data?.to === value ? preview.data : undefined;

  const pick = (next: string) => {
    setValue(next);
    setConfirmed(false);
    preview.reset();
    choose.reset();
  };
  const save = () =>
    void choose
      .mutateAsync({ value: value === standard ? null : value, why, confirmed })
      .then(() => {
        tell(`${nameOf(code)}: ${value} from now on.`);
        onClose();
      })
      // Shown beside the button.
      .catch(() => undefined);

  return (
    <Modal opened onClose={onClose} title={`Change: ${nameOf(code)}`} size="xl">
      <Stack>
        <Text>{means}</Text>
        <Values allowed={allowed} standard={standard} value={value} onChange={pick} />
        {value !== standard && (
          <Group>
            <Button variant="default" size="xs" onClick={() => pick(standard)}>
              Back to the default, {standard}
            </Button>
          </Group>
        )}
        <Refused error={preview.error} />
        {value !== now && seen === undefined && (
          <Group>
            <Button
              loading={preview.isPending}
              disabled={value === ''}
              onClick={() => preview.mutate(value)}
            >
              See what it changes
            </Button>
          </Group>
        )}
        {seen && value !== now && (
          <>
            {seen.lessCautious && (
              <Alert color="amber" variant="light" title="Less cautious than the default">
                <Text mb="xs">
                  You choose less cautious than the catalogue: {value} instead of {standard}.
                </Text>
                <Checkbox
                  label="The studio means it"
                  checked={confirmed}
                  onChange={(event) => setConfirmed(event.currentTarget.checked)}
                />
              </Alert>
            )}
            <ConsequencesList consequences={seen.bookings} />
            <TextInput
              label="Why"
              description="Kept with the change, for those who ask later"
              maxLength={300}
              value={why}
              onChange={(event) => setWhy(event.currentTarget.value)}
            />
            <Refused error={choose.error} />
            <Group>
              <Button
                loading={choose.isPending}
                disabled={seen.lessCautious && !confirmed}
                onClick={save}
              >
                Save
              </Button>
              <Button variant="default" onClick={onClose} disabled={choose.isPending}>
                Leave it
              </Button>
            </Group>
          </>
        )}
      </Stack>
    </Modal>
  );
}

interface ValuesProps {
  allowed: string;
  standard: string;
  value: string;
  onChange: (value: string) => void;
}

function Values({ allowed, standard, value, onChange }: ValuesProps) {
  const { words, range } = valuesOf(allowed);
  const isWord = words.includes(value);
  const entry = range && (
    <NumberInput
      label="Number"
      description={`${range.from} to ${range.to}`}
      min={range.from}
      max={range.to}
      allowDecimal={false}
      value={isWord || value === '' ? '' : Number(value)}
      onChange={(next) => onChange(next === '' ? '' : String(next))}
      w="11rem"
    />
  );
  if (words.length === 0) return entry;
  return (
    <>
      <Radio.Group
        label="Value"
        value={isWord ? value : number}
        onChange={(next) => onChange(next === number ? String(range?.from ?? '') : next)}
      >
        <Stack gap={6} mt={4}>
          {words.map((word) => (
            <Radio
              key={word}
              value={word}
              label={word === standard ? `${word} (the default)` : word}
            />
          ))}
          {range && <Radio value={number} label="a number" />}
        </Stack>
      </Radio.Group>
      {!isWord && entry}
    </>
  );
}
