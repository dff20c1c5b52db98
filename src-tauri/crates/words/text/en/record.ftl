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
