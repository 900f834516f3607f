import '@mantine/dates/styles.css';
import { DateInput, type DateInputProps } from '@mantine/dates';
import { readDay } from '@/components/time/days';

type Props = Omit<DateInputProps, 'value' | 'onChange' | 'dateParser' | 'valueFormat'> & {
  value?: string | null;
  onChange?: (day: string | null) => void;
};

/** A day, typed as people write it or picked; given and kept as an ISO date. */
export const DayInput = (props: Props) => (
  <DateInput
    placeholder="day month year"
    clearable
    clearButtonProps={{ 'aria-label': 'Clear the day' }}
    {...props}
    dateParser={readDay}
    valueFormat="D MMM YYYY"
    previousLabel="Month before"
    nextLabel="Month after"
  />
);
