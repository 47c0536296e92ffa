#!/bin/sh
# Runs the Postgres server given as arguments for as long as standard input stays open.
# Standard input is a pipe from the process that wants the database. The kernel closes it when that process ends,
# however it ends, so a `kill -9` there leaves no server behind: it is shut down as on an ordered stop.
# A shell script and not a Node program, so that it does not die with every Node process of the machine.
exec 3<&0
"$@" </dev/null 3<&- &
server=$!
(
  read -r _ <&3
  # SIGINT is Postgres's fast shutdown: sessions are ended, everything is written.
  kill -INT "$server"
) &
watcher=$!
wait "$server"
status=$?
kill "$watcher" 2>/dev/null
exit "$status"
