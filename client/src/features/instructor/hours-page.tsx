import { Tabs, Title } from '@mantine/core';
import { useQuery } from '@tanstack/react-query';
import { useMe } from '@/api/session';
import { staffQueries } from '@/api/staff';
import { AvailabilityWeek } from '@/components/staff/availability-week';
import { HoursView } from '@/components/staff/hours-view';
import { Leave } from '@/components/staff/leave';
import { PayView } from '@/components/staff/pay-view';
import { Wishes } from '@/components/staff/wishes';
import { Asked, Empty } from '@/components/states/asked';

export function HoursPage() {
  const { instructorId } = useMe();
  return (
    <>
      <Title mb="md">My hours</Title>
      {instructorId == null ? (
        <Empty title="This account teaches nobody">Ask the owner to tie it to you.</Empty>
      ) : (
        <Mine instructorId={instructorId} />
      )}
    </>
  );
}

function Mine({ instructorId }: { instructorId: number }) {
  const page = useQuery(staffQueries.one(instructorId));
  return (
    <Asked query={page}>
      {({ availability, leave, wishes }) => (
        <Tabs defaultValue="taught" keepMounted={false}>
          <Tabs.List mb="md">
            <Tabs.Tab value="taught">Taught</Tabs.Tab>
            <Tabs.Tab value="leave">Days away</Tabs.Tab>
            <Tabs.Tab value="availability">Availability</Tabs.Tab>
            <Tabs.Tab value="wishes">Wishes</Tabs.Tab>
            <Tabs.Tab value="pay">Pay</Tabs.Tab>
          </Tabs.List>
          <Tabs.Panel value="taught">
            <HoursView instructorId={instructorId} />
          </Tabs.Panel>
          <Tabs.Panel value="leave">
            <Leave instructorId={instructorId} leave={leave} />
          </Tabs.Panel>
          <Tabs.Panel value="availability">
            <AvailabilityWeek instructorId={instructorId} hours={availability} />
          </Tabs.Panel>
          <Tabs.Panel value="wishes">
            <Wishes instructorId={instructorId} wishes={wishes} />
          </Tabs.Panel>
          <Tabs.Panel value="pay">
            <PayView instructorId={instructorId} />
          </Tabs.Panel>
        </Tabs>
      )}
    </Asked>
  );
}
