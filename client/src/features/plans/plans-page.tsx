import { Text, Title } from '@mantine/core';
import { useQuery } from '@tanstack/react-query';
import { catalogueQueries } from '@/api/catalogue';
import { Asked, Empty, Lines } from '@/components/states/asked';
import { Go } from '@/components/states/go';
import { useHere } from './here';
import classes from './plans.module.css';

/** Every class, as the way to its plan. */
export function PlansPage() {
  const { plan } = useHere();
  const list = useQuery(catalogueQueries.classes());
  return (
    <div className={classes.page}>
      <Title>Class plans</Title>
      <Text c="dimmed" mb="md">
        What each class is made of, movement by movement. A session can have a plan of its own.
      </Text>
      <Asked query={list} waiting={<Lines count={6} height={64} />}>
        {(all) =>
          all.length === 0 ? (
            <Empty title="No classes yet" />
          ) : (
            <ul className={classes.classes}>
              {all.map(({ id, name, about, minutes }) => (
                <li key={id}>
                  <Go to={plan} params={{ classId: String(id) }} fw={600}>
                    {name}
                  </Go>
                  <Text component="span" c="dimmed">
                    {minutes} minutes
                  </Text>
                  <Text size="sm">{about}</Text>
                </li>
              ))}
            </ul>
          )
        }
      </Asked>
    </div>
  );
}
