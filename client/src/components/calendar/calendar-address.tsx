import { Button, CopyButton, Group, Modal, Stack, Switch, Text, TextInput } from '@mantine/core';
import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { feedQueries, useMakeFeed, useNameInFeed, useRevokeFeed } from '@/api/feeds';
import type { Feed, FeedReads } from '@/api/types';
import { Asked, Lines, Refused } from '@/components/states/asked';
import { tell, tellRefused } from '@/components/states/told';
import { momentWords } from '@/components/time/zone';
import classes from './calendar.module.css';

interface Props {
  reads: FeedReads;
  /** What her calendar says of a class when it does not name it. */
  plain: string;
}

/** The private address of somebody's calendar: made, copied once, made anew, taken back. */
export function CalendarAddress({ reads, plain }: Props) {
  const feeds = useQuery(feedQueries.list());
  return (
    <Asked query={feeds} waiting={<Lines count={2} height={96} />}>
      {(list) => (
        <Address feed={list.find((feed) => feed.reads === reads)} reads={reads} plain={plain} />
      )}
    </Asked>
  );
}

type Doing = 'anew' | 'back';

function Address({ feed, reads, plain }: Props & { feed: Feed | undefined }) {
  const [made, setMade] = useState<{ id: number; address: string } | null>(null);
  const [doing, setDoing] = useState<Doing | null>(null);
  const [wished, setWished] = useState(false);
  const make = useMakeFeed();
  const name = useNameInFeed();
  const revoke = useRevokeFeed();
  const herChoice = reads === 'client';
  const namesClass = name.isPending ? name.variables.namesClass : (feed?.namesClass ?? wished);

  const makeOne = () =>
    make.mutate(
      { reads, namesClass: !herChoice || namesClass },
      {
        onSuccess: ({ id, path }) => {
          setMade({ id, address: new URL(path, window.location.href).href });
          setDoing(null);
        },
      },
    );
  const takeBack = (feedId: number) =>
    revoke.mutate(feedId, {
      onSuccess: () => {
        setMade(null);
        setDoing(null);
        tell('The address was taken back. Nobody can read it any more.');
      },
    });
  const nameClass = (wanted: boolean) => {
    setWished(wanted);
    if (feed !== undefined)
      name.mutate({ feedId: feed.id, namesClass: wanted }, { onError: tellRefused });
  };

  return (
    <Stack>
      {herChoice && (
        <Switch
          label="Name the class"
          description={`Otherwise your calendar says “${plain}”, with the room. The name of a class can tell others who see your calendar how far along you are.`}
          checked={namesClass}
          onChange={(event) => nameClass(event.currentTarget.checked)}
        />
      )}
      {feed === undefined ? (
        <>
          <Readable />
          <Refused error={make.error} />
          <Button onClick={makeOne} loading={make.isPending} style={{ alignSelf: 'start' }}>
            Make an address
          </Button>
        </>
      ) : (
        <div className={classes.address}>
          {made !== null && made.id === feed.id ? (
            <NewAddress address={made.address} />
          ) : (
            <Text>
              You have an address, made {momentWords(feed.madeAt)}. It was shown when it was made;
              for another device make a new one.
            </Text>
          )}
          <Readable />
          <Group mt="md" gap="xs">
            <Button variant="default" onClick={() => setDoing('anew')}>
              Make a new one
            </Button>
            <Button variant="default" color="brick" onClick={() => setDoing('back')}>
              Take it back
            </Button>
          </Group>
        </div>
      )}
      <Modal
        opened={doing !== null && feed !== undefined}
        onClose={() => setDoing(null)}
        title={doing === 'anew' ? 'Make a new address' : 'Take the address back'}
      >
        <Stack>
          <Text>
            {doing === 'anew'
              ? 'The address so far stops working at once. Where it is in use, put the new one in its place.'
              : 'It stops working at once. A calendar that has read it may keep what it read until you remove it there.'}
          </Text>
          <Refused error={doing === 'anew' ? make.error : revoke.error} />
          <Group>
            {doing === 'anew' ? (
              <Button onClick={makeOne} loading={make.isPending}>
                Yes, make a new one
              </Button>
            ) : (
              <Button
                color="brick"
                onClick={() => feed !== undefined && takeBack(feed.id)}
                loading={revoke.isPending}
              >
                Yes, take it back
              </Button>
            )}
            <Button variant="default" onClick={() => setDoing(null)}>
              Leave it
            </Button>
          </Group>
        </Stack>
      </Modal>
    </Stack>
  );
}

const Readable = () => (
  <Text mt="sm" className={classes.readable}>
    Whoever has the address can read this calendar without signing in. Keep it to yourself, and take
    it back if somebody else may have it.
  </Text>
);

function NewAddress({ address }: { address: string }) {
  return (
    <Stack gap="sm" role="status">
      <Text fw={600}>Your address. It is shown only now.</Text>
      <TextInput
        aria-label="Your calendar’s address"
        value={address}
        readOnly
        onFocus={(event) => event.currentTarget.select()}
      />
      <CopyButton value={address} timeout={4000}>
        {({ copied, copy }) => (
          <Button onClick={copy} style={{ alignSelf: 'start' }}>
            {copied ? 'Copied' : 'Copy it'}
          </Button>
        )}
      </CopyButton>
      <Text>
        Paste it where your calendar asks for the address of a calendar to subscribe to. It looks
        for changes by itself, often only every few hours.
      </Text>
    </Stack>
  );
}
