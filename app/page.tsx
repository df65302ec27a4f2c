import { redirect } from 'next/navigation';

/** The start is the floor: what everyone may see, whatever their role. */
export default function StartPage(): never {
  redirect('/floor');
}
