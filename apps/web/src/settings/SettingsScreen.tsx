import { useQuery } from '@tanstack/react-query';
import type { SettingsView } from '@twelvemonth/exchange';
import { useMay } from '../frame/may.ts';
import { Awaited } from '../paper/Awaited.tsx';
import { Note } from '../paper/Note.tsx';
import { Page } from '../paper/Page.tsx';
import { settings } from '../server/queries.ts';
import { Connection } from './Connection.tsx';
import { Devices } from './Devices.tsx';
import { SetUp } from './SetUp.tsx';
import { Staff } from './Staff.tsx';
import { Units } from './Units.tsx';

export function SettingsScreen() {
  const may = useMay();
  const asked = useQuery({ ...settings(), enabled: may('settings') });
  return (
    <Page title="Settings" sub="Units, chairs, hours and days; who works here and in which roles.">
      {may('settings') ? (
        <Awaited query={asked} what="the settings">
          {(data) => <Sheet data={data} />}
        </Awaited>
      ) : (
        <Note>Settings are kept by the service lead and the administrator.</Note>
      )}
    </Page>
  );
}

function Sheet({ data }: { data: SettingsView }) {
  const may = useMay();
  return (
    <>
      <SetUp steps={data.setUp} />
      <Units units={data.units} mayChange={may('set unit')} />
      <Connection certificate={data.certificate} />
      <Devices data={data} mayChange={may('enrolDevice')} />
      <Staff staff={data.staff} mayChange={may('addStaff')} />
    </>
  );
}
