/** Who is on today's list, for a call while the server cannot be reached: the list is what this device keeps. */
import { useQuery } from '@tanstack/react-query';
import type { TodayView } from '@twelvemonth/exchange';
import { useMay } from '../frame/may.ts';
import { useUnit } from '../frame/unit.ts';
import { today } from '../server/queries.ts';

type Listed = TodayView['visits'][number];

function useList(): readonly Listed[] {
  const { unit } = useUnit();
  const may = useMay();
  return useQuery({ ...today(unit?.unit), enabled: unit !== undefined && may('today') }).data?.visits ?? [];
}

export const useListedToday = (patient: string): Listed | undefined => useList().find((one) => one.patient === patient);

/** Each word typed is somewhere in the name or the number. */
export function useFoundToday(typed: string): readonly Listed[] {
  const words = typed.trim().toLowerCase().split(/\s+/).filter(Boolean);
  const list = useList();
  if (words.length === 0) return [];
  return list.filter(({ name, number }) => {
    const all = `${name} ${number} ${number.replaceAll(' ', '')}`.toLowerCase();
    return words.every((word) => all.includes(word));
  });
}
