import type { UseFormReturnType } from '@mantine/form';
import { Problem } from '@/api/problem';

/** Puts the server's words beside the fields they are about. */
export const showRefusal =
  <Values>(form: UseFormReturnType<Values>) =>
  (error: Error) => {
    if (error instanceof Problem) form.setErrors(error.fields);
  };
