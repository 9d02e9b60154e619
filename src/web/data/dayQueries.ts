import { keepPreviousData, useQuery } from '@tanstack/react-query';
import type {
  AppointmentChange,
  CheckedDay,
  ColumnUse,
  DaySheet,
  DayView,
  FoundPerson,
  NewAppointment,
  ReadDay,
  TakenDay,
} from '../../api/day.ts';
import type { DateOrder } from '../../core/day/birthday.ts';
import type { DayRow } from '../../core/day/dayRow.ts';
import { callApi } from './api.ts';
import { type AppointmentSaved, createAppointmentChanges } from './appointmentChanges.ts';

const REREAD_MS = 30_000;

/** Read again now and then: an assistant at another page may have opened a visit. */
export function useDay(date: string) {
  return useQuery({
    queryKey: ['day', date],
    queryFn: () => callApi<DayView>('GET', `/api/days/${date}`),
    refetchInterval: REREAD_MS,
  });
}

export function useDaySheets(date: string) {
  return useQuery({
    queryKey: ['day-sheets', date],
    queryFn: async () => (await callApi<{ sheets: readonly DaySheet[] }>('GET', `/api/days/${date}/sheets`)).sheets,
    gcTime: 0,
  });
}

/** People by the beginning of a name, a chart number or a birthday. */
export const findPeopleOnFile = async (text: string): Promise<readonly FoundPerson[]> =>
  (await callApi<{ people: readonly FoundPerson[] }>('GET', `/api/people/found?text=${encodeURIComponent(text)}`)).people;

export function useFoundPeople(text: string) {
  return useQuery({
    queryKey: ['found', text],
    queryFn: () => findPeopleOnFile(text),
    enabled: text !== '',
    placeholderData: keepPreviousData,
    gcTime: 0,
  });
}

export const addAppointment = (date: string, appointment: NewAppointment) =>
  callApi<{ id: string }>('POST', `/api/days/${date}/appointments`, appointment);

export const changeAppointment = createAppointmentChanges((id: string, change: AppointmentChange) =>
  callApi<AppointmentSaved>('PUT', `/api/appointments/${id}`, change),
);

export const readList = (date: string, text: string, columns?: readonly ColumnUse[]) =>
  callApi<ReadDay>('POST', `/api/days/${date}/read`, columns ? { text, columns } : { text });

interface Rows {
  readonly rows: readonly DayRow[];
  readonly dateOrder?: DateOrder | undefined;
}

export const checkRows = (date: string, rows: Rows) => callApi<CheckedDay>('POST', `/api/days/${date}/check`, rows);

export const importRows = (date: string, rows: Rows) => callApi<TakenDay>('POST', `/api/days/${date}/import`, rows);
