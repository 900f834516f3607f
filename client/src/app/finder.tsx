import { TextInput } from '@mantine/core';
import { useNavigate } from '@tanstack/react-router';
import { lazy, Suspense, useRef, useState } from 'react';
import { findInput } from '@/components/find/find-input';
import { useShortcut } from '@/components/keyboard/shortcut';
import type { Desk } from './desks';
import classes from './shell.module.css';

const FindBox = lazy(() =>
  import('@/components/find/find-box').then((found) => ({ default: found.FindBox })),
);

/** The find box of a desk. `/` comes here; what is typed before its code has come is kept. */
export function Finder({ card }: { card: NonNullable<Desk['card']> }) {
  const navigate = useNavigate();
  const input = useRef<HTMLInputElement>(null);
  const [text, setText] = useState('');
  const [typing, setTyping] = useState(false);

  useShortcut('/', () => {
    input.current?.focus();
    input.current?.select();
  });

  return (
    <div className={classes.find}>
      <Suspense
        fallback={
          <TextInput
            {...findInput}
            ref={input}
            value={text}
            onFocus={() => setTyping(true)}
            onChange={(event) => setText(event.currentTarget.value)}
          />
        }
      >
        <FindBox
          ref={input}
          text={text}
          onText={setText}
          takesOver={typing}
          onOpen={(id) => void navigate({ to: card, params: { clientId: String(id) } })}
        />
      </Suspense>
    </div>
  );
}
