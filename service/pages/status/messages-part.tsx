import { faultsInNote } from "../../jobs/fault-note.ts";
import type { NamedChannel } from "../../notify/channel.ts";
import { messageFaultOf } from "../../notify/message-fault.ts";
import type { Message } from "../../store/outbox-store.ts";
import type { Saying } from "./saying.ts";
import { Part, type PartProps } from "./status-parts.tsx";

/** The last messages: by which way each went, whether it came through, and if not, what to do. */
export function MessagesPart({
  status: { messages },
  saying,
  isAmiss,
  channels,
}: PartProps & { channels: readonly NamedChannel[] }) {
  const { words } = saying;
  return (
    <Part heading={words.say("status.messages")} isAmiss={isAmiss("messages")}>
      <p>{words.say(messages.length === 0 ? "status.messages-none" : "status.messages-lead")}</p>
      {messages.length > 0 && (
        <ol class="plain">
          {messages.map((message) => (
            <li>
              <p>
                <strong>{message.subject}</strong>
              </p>
              <p>{wayText(message, { channels, saying })}</p>
              <p class={isSettledWell(message) ? undefined : "amiss"}>{stateText(message, saying)}</p>
            </li>
          ))}
        </ol>
      )}
    </Part>
  );
}

function isSettledWell({ state, tries }: Message): boolean {
  return state === "sent" || (state === "waiting" && tries === 0);
}

function wayText(
  { channel }: Message,
  { channels, saying: { words } }: { channels: readonly NamedChannel[]; saying: Saying },
): string {
  const known = channels.find(({ name }) => name === channel);
  if (!known) return words.say("status.way.gone", { name: channel });
  if (known.to === undefined) return words.say(known.sort === "mqtt" ? "status.way.mqtt" : "status.way.log");
  const { sort = "mail", to: address } = known;
  if (sort === "push" || sort === "webhook") return words.say(`status.way.${sort}`, { address });
  return words.say("status.way.to", { address });
}

function stateText(message: Message, saying: Saying): string {
  const { words, time } = saying;
  switch (message.state) {
    case "sent":
      return words.say("status.sent", { time: time(message.settledUtcMs ?? message.createdUtcMs) });
    case "given-up": {
      const said = words.say("status.given-up", { time: time(message.settledUtcMs ?? message.createdUtcMs) });
      return `${said} ${whyText(message, saying)}`.trim();
    }
    case "waiting":
      if (message.tries === 0) return words.say("status.waiting");
      return `${words.say("status.waiting-again", {
        tryCount: message.tries,
        time: time(message.nextTryUtcMs),
        untilTime: time(message.keepTryingUntilUtcMs),
      })} ${whyText(message, saying)}`.trim();
  }
}

function whyText({ lastFault }: Message, saying: Saying): string {
  if (lastFault === null) return "";
  return faultsInNote(messageFaultOf(lastFault)).map(saying.fault).join(" ");
}
