import { useQuery } from '@tanstack/react-query';
import { useEffect, useState } from 'react';
import { post } from '../../server/request.ts';

const pauseMilliseconds = 150;
const fewestLetters = 2;

/** Who is found for what is typed, a short pause after the last letter. A POST: no name stands in an address. */
export function useFound(typed: string) {
  const [text, setText] = useState('');
  useEffect(() => {
    const timer = setTimeout(() => setText(typed.trim()), pauseMilliseconds);
    return () => clearTimeout(timer);
  }, [typed]);
  const asked = useQuery({
    queryKey: ['search', text],
    queryFn: () => post('search', { text }),
    enabled: text.length >= fewestLetters,
    placeholderData: (before) => before,
  });
  const searching = text.length >= fewestLetters;
  return {
    found: searching ? (asked.data?.found ?? []) : [],
    settled: searching && asked.isSuccess && !asked.isPlaceholderData,
    trouble: searching ? asked.error : null,
  };
}
