# People, corrections, copies and seals.

people-unknown = This book knows nobody yet. Names are taken as they are typed. Make the first supervisor to change that.
people-known = Whoever works at the car signs on with their PIN. Supervisors seal and keep this list with their passphrase.

refused-pin-first = Nobody is at the car by PIN, or nobody touched this window for a while. Enter your PIN first.
refused-with-pin = This book knows its people. Sign on with your PIN.
refused-with-passphrase = This book knows its people. A supervisor seals with their passphrase.
refused-hand-over = { $by } is not the one at the car. Hand over with { $by }'s PIN first.
refused-not-alone = { $by } may not do this step alone. Ask a technician or a supervisor to sign on at this job.
refused-amend = This cannot be corrected by a text: something rests on it. Open its step again and record it anew.
refused-amend-rank = Whoever corrects this has at least the rank that its step asks for.
refused-amend-text = Write what it should have said.

row-corrected = Corrected: { $step }, entry { $number }
row-corrected-by = Corrected in entry { $number }: { $field }.
row-corrected-text = { $field }: “{ $from }” should have said “{ $to }”

copy-made = The book was copied to { $place }.
copy-failed = No copy of the book was made at the end of this job. The job itself is safe. { $why }

sheet-code = Seal code
sheet-key = Seal key

## What the list of people does not allow
refused-first-supervisor = A job on a real car begins once this book knows its people. Make the first supervisor, or practise on the simulated car.
refused-person-unknown = { $by } is not in the list of people. Ask a supervisor to enter you, or look at the initials.
refused-not-a-supervisor = { $by } is no supervisor. Ask one.
refused-initials-taken = The initials { $by } are taken. Choose others: the record must tell people apart for ever.
refused-text-form = The name is missing or longer than 200 letters.
refused-alone-is-for-trainees = Only a trainee has a list of what they may do alone.
refused-first-is-a-supervisor = The first person in the list is a supervisor, who then enters the others.
refused-not-the-first = There are people in this book already. A supervisor among them enters the others.
refused-last-supervisor = { $by } is the only supervisor. Make another one first, or nobody could keep the list.
refused-pin-form = A PIN is 4 to 12 digits, and not one digit again and again.
refused-passphrase-form = A passphrase has at least 10 characters. A sentence is easy to keep in mind.
refused-wrong-pin = This is not the PIN of { $by }. That it was tried is recorded.
refused-wait-for-pin = Wrong PINs were entered for { $by }. Wait { $seconds } s before the next try.
refused-wrong-passphrase = This passphrase does not open the key of { $by }.
refused-no-key = { $by } has no key, or its file is missing. Bring the file back beside the book, or have a new key set.
refused-bad-key-file = The key file of { $by } cannot be used. Bring back the right one, or have a new key set.
refused-wrong-code = This is not the recovery code of this book. Look at it again; each code counts once.
refused-no-customer = There is no such customer data in this book, or it is erased already.
refused-no-random = The system gives no random numbers ({ $why }), so no secret can be kept. Start the computer again.

## The procedure that a job begins with
procedure-shipped = The procedure that ships with the program. Its proof is made by the program's tests.
procedure-proved = Another procedure, proved just now: every safety property holds in all its states.
procedure-not-proved = This procedure is not proved to be safe. No job begins with it, unless a supervisor signs for it.
procedure-signed = Not proved to be safe. A supervisor signed that the next job may begin with it; the record and the sheet say so.
safety-broken = Not kept: { $property }. At: { $steps }.
safety-fault = { $step }: { $says }.
safety-1 = nobody is under or at a raised car that this raise did not acknowledge and secure
safety-2 = no collar is turned under load, with a link on, or against its ring
safety-3 = no car is sealed or driven that is not whole
safety-4 = no figure comes from a void reading or from readings of unlike state
safety-5 = every step has a name, and no gate is waived by the wrong person
safety-6 = no car goes up with somebody inside or ballast loose
safety-7 = no car comes down or rolls on loose parts or on somebody
safety-8 = nobody reaches under a car that can roll, and no reading is taken of a held one
row-opened = Job begun
row-opened-with = { $car }; procedure { $document }
remark-not-proved = The procedure of this job is not proved to be safe. { $name } ({ $by }) signed for it: “{ $reason }”.
departure-not-proved = Procedure not proved
refused-procedure-not-proved = The chosen procedure is not proved to be safe. A supervisor signs for it first, or the job begins with the shipped one.
refused-nothing-to-sign = There is nothing to sign for: the chosen procedure is proved.
refused-procedure-file = There is no procedure to be read at { $place }: { $why }. What was chosen before stays chosen. Name a file of this computer with its whole path.
refused-procedure-form = What stands at { $place } is no procedure: { $why }. What was chosen before stays chosen. Put it right, and look again.

## The book
copies-none = No place for copies is named, so none was made. Name a folder on another disk.
import-taken = The job was checked and taken in. It stands in the list below.
import-there = Just this state of the job is here already. Nothing was changed.
export-written = Written to { $place }. Whoever gets it can check it; the recipe stands in it.
refused-import-file = There is no exported job to be read at { $place }: { $why }. Nothing was taken in. Name a file of this computer with its whole path.
refused-no-imported-job = There is no such job of another bay in this book.
refused-customer-text = Write what is to be kept, or erase it.
person-record = { $jobs } jobs: { $steps } steps done, { $held } tries held by a gate, { $waived } of them waived.
