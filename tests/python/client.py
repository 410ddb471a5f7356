"""A client of a Ladderline server, written from docs/protocol.md alone, with Python's own library.

Plays both phones of one job at a simulated beam pair: opens the job, joins, follows every order until the pair is aligned,
accepted and proven, then fetches the record and the export and checks the chain with its own hashing and its own canonical JSON.

    python3 client.py http://localhost:8470

Prints one JSON object. Any answer that is not as the document says ends it with an error.
"""

import base64
import hashlib
import http.client
import json
import math
import os
import secrets
import socket
import struct
import sys
import time
from urllib.parse import urlsplit

PROTOCOL = 4
GENESIS = "0" * 64

METER = {
    "name": "Percent of full scale", "unit": "percent", "min": 0, "max": 100, "resolution": 1, "law": "linear",
    "saturatedAt": 99, "lostAt": 2, "bandLow": 40, "bandHigh": 70, "tolerance": 1,
    # So short that the job takes seconds: the pair below follows at once.
    "settleMs": 20, "holdMs": 100, "gain": "continuous",
}
ADJUSTERS = {"name": "Two hand-turned adjusters", "maxStep": 12, "backlash": 0, "travel": 80}


# HTTP


class Api:
    def __init__(self, origin):
        self.at = urlsplit(origin)

    def ask(self, method, path, body=None, token=None, status=200):
        connection = http.client.HTTPConnection(self.at.hostname, self.at.port, timeout=20)
        headers = {"Content-Type": "application/json"}
        if token:
            headers["Authorization"] = "Bearer " + token
        connection.request(method, path, None if body is None else json.dumps(body), headers)
        answer = connection.getresponse()
        text = answer.read().decode("utf-8")
        connection.close()
        if answer.status != status:
            raise SystemExit(f"{method} {path}: {answer.status} instead of {status}: {text[:500]}")
        return text


# The websocket (RFC 6455): text frames, pings and the end are all that is needed.


class Socket:
    def __init__(self, origin, path):
        at = urlsplit(origin)
        self.socket = socket.create_connection((at.hostname, at.port), timeout=20)
        key = base64.b64encode(os.urandom(16)).decode()
        self.socket.sendall(
            (
                f"GET {path} HTTP/1.1\r\nHost: {at.netloc}\r\nUpgrade: websocket\r\nConnection: Upgrade\r\n"
                f"Sec-WebSocket-Key: {key}\r\nSec-WebSocket-Version: 13\r\n\r\n"
            ).encode()
        )
        self.waiting = b""
        head = self.until(b"\r\n\r\n").decode()
        # RFC 6455, section 4.2.2.
        accept = base64.b64encode(
            hashlib.sha1((key + "258EAFA5-E914-47DA-95CA-C5AB0DC85B11").encode()).digest()
        ).decode()
        if " 101 " not in head.split("\r\n")[0] or accept not in head:
            raise SystemExit("no websocket: " + head)

    def more(self):
        part = self.socket.recv(65536)
        if not part:
            raise SystemExit("the server ended the connection")
        self.waiting += part

    def until(self, mark):
        while mark not in self.waiting:
            self.more()
        head, self.waiting = self.waiting.split(mark, 1)
        return head

    def take(self, count):
        while len(self.waiting) < count:
            self.more()
        part, self.waiting = self.waiting[:count], self.waiting[count:]
        return part

    def send(self, message):
        self.frame(0x1, json.dumps(message).encode())

    def frame(self, opcode, payload):
        if len(payload) < 126:
            length = bytes([0x80 | len(payload)])
        else:
            length = bytes([0x80 | 126]) + struct.pack("!H", len(payload))
        mask = os.urandom(4)
        masked = bytes(byte ^ mask[i % 4] for i, byte in enumerate(payload))
        self.socket.sendall(bytes([0x80 | opcode]) + length + mask + masked)

    def receive(self):
        """The next message."""
        text = b""
        while True:
            first, second = self.take(2)
            opcode, count = first & 0x0F, second & 0x7F
            if count == 126:
                (count,) = struct.unpack("!H", self.take(2))
            elif count == 127:
                (count,) = struct.unpack("!Q", self.take(8))
            payload = self.take(count)
            if opcode == 0x9:
                self.frame(0xA, payload)
            elif opcode == 0x8:
                raise SystemExit(f"closed: {payload!r}")
            elif opcode in (0x0, 0x1):
                text += payload
                if first & 0x80:
                    return json.loads(text)


class Phone:
    """One seat, or one who watches: says things until they are acknowledged, and keeps every entry."""

    def __init__(self, origin, token, **more):
        self.socket = Socket(origin, "/api/socket")
        self.entries = []
        self.acknowledged = {}
        self.receipts = []
        self.watching = []
        self.last = {}
        self.socket.send({"t": "hello", "v": PROTOCOL, "token": token, "after": -1, **more})
        self.take_until(lambda message: message["t"] == "caught-up")

    def take_until(self, fits):
        while True:
            message = self.socket.receive()
            kind = message["t"]
            if kind == "entries":
                for entry in message["entries"]:
                    if entry["seq"] != len(self.entries):
                        raise SystemExit(f"entry {entry['seq']} came after {len(self.entries)} others")
                    self.entries.append(entry)
            elif kind == "ack":
                self.acknowledged[message["id"]] = message["seq"]
            elif kind == "receipt":
                self.receipts.append((message["instruction"], message["how"]))
            elif kind == "presence":
                self.watching = message["presence"].get("watching", self.watching)
            elif kind == "welcome" and message["v"] != PROTOCOL:
                raise SystemExit(f"a server of version {message['v']}")
            elif kind == "refused" and message["reason"] == "too-fast" and message.get("id") in (None, self.last.get("id")):
                time.sleep(1)
                self.socket.send(self.last)
            elif kind == "refused":
                raise SystemExit(f"refused: {message}")
            if fits(message):
                return

    def send(self, kind, **fields):
        """One message that is logged; comes back when it is acknowledged."""
        identity = secrets.token_urlsafe(16)
        self.last = {"t": kind, "id": identity, **fields}
        self.socket.send(self.last)
        self.take_until(lambda _: identity in self.acknowledged)
        return identity

    def say(self, text, re):
        return self.send("say", via="typed", text=text, re=re)

    def order(self):
        """The instruction that is current: the last one, unless it was withdrawn (R30)."""
        for entry in reversed(self.entries):
            kind = entry["fact"]["type"]
            if kind == "withdrawn":
                return None
            if kind == "instruction":
                return entry
        return None


# The beam pair: a Gaussian beam, two screws, and a gain.


class Pair:
    def __init__(self):
        self.at = {"horizontal": -9, "vertical": 5}
        self.gain_db = 0.0
        self.loss_db = 0.0

    def power(self, gain_db):
        off = (self.at["horizontal"] ** 2 + self.at["vertical"] ** 2) / 6**2
        return math.exp(-math.log(2) * off) * 10 ** ((3 - gain_db - self.loss_db) / 10)

    def reading(self):
        value = round(100 * self.power(self.gain_db))
        if value >= METER["saturatedAt"]:
            return "saturated"
        return "no signal" if value <= METER["lostAt"] else str(value)

    def set_gain(self, action):
        if "toward" not in action:
            self.gain_db = 0.0
            return
        wanted = action["toward"] / 100
        self.gain_db = min(20.0, max(0.0, 10 * math.log10(self.power(0) / wanted)))


ALL_DB = 60
HALF_DB = 10 * math.log10(2)


def follow(pair, action):
    """Does what an order asks. Returns who says what then; nobody, when there is nothing to say."""
    kind = action["kind"]
    if kind == "turn":
        pair.at[action["axis"]] += action["eighths"]
        return "emitter", "done"
    if kind == "gain":
        pair.set_gain(action)
        return "emitter", "done"
    if kind == "re-aim":
        # By eye, so still beside the receiver.
        return "emitter", "done"
    if kind == "block":
        pair.loss_db = ALL_DB
        return "emitter", "blocked"
    if kind == "cover":
        pair.loss_db = ALL_DB if action["how"] == "full" else HALF_DB
        return "emitter", "fully covered" if action["how"] == "full" else "half covered"
    if kind in ("unblock", "uncover"):
        pair.loss_db = 0
        return "emitter", "clear"
    if kind in ("read", "hold"):
        return "panel", pair.reading()
    if kind == "check":
        return "emitter", "done"
    if kind == "ask":
        return "panel", answer(pair, action["question"])
    if kind == "offer-accept":
        return "panel", "accept"
    if kind == "confirm-item":
        return "panel", "told the control room" if action["item"] == "people-told" else "yes"
    if kind == "watch-panel":
        return "panel", "panel shows " + action["expect"]
    if kind in ("offer-sign", "finished"):
        return None
    # "settle-issue" too: this crew has no test that fails.
    raise SystemExit(f"an order that this crew cannot follow: {action}")


def answer(pair, question):
    """What an honest crew says to a question: each of its turns was as it said, and it reads again."""
    if question["kind"] == "which-value":
        return pair.reading()
    return "no" if question["kind"] == "which-move" else "yes"


# The chain


def canonical(value):
    """RFC 8785. Keys by UTF-16 code units, numbers as ECMAScript writes them."""
    if isinstance(value, dict):
        keys = sorted(value, key=lambda key: key.encode("utf-16-be"))
        return "{" + ",".join(f"{canonical(key)}:{canonical(value[key])}" for key in keys) + "}"
    if isinstance(value, list):
        return "[" + ",".join(canonical(each) for each in value) + "]"
    if isinstance(value, float):
        return number(value)
    return json.dumps(value, ensure_ascii=False)


def number(value):
    """ECMAScript's Number::toString for a double."""
    if value == 0:
        return "0"
    sign = "-" if value < 0 else ""
    mantissa, _, exponent = f"{abs(value)!r}".partition("e")
    whole, _, fraction = mantissa.partition(".")
    digits = (whole + fraction).lstrip("0")
    point = len(whole) + int(exponent or 0) - (len(whole + fraction) - len(digits))
    digits = digits.rstrip("0")
    count = len(digits)
    if count <= point <= 21:
        return sign + digits + "0" * (point - count)
    if 0 < point <= 21:
        return sign + digits[:point] + "." + digits[point:]
    if -6 < point <= 0:
        return sign + "0." + "0" * -point + digits
    power = f"e{'+' if point > 0 else '-'}{abs(point - 1)}"
    return sign + digits[0] + ("." + digits[1:] if count > 1 else "") + power


def sha256(text):
    return hashlib.sha256(text.encode("utf-8")).hexdigest()


# What names people in a fact (R110).
NAMES = {
    "seated": ["person"],
    "signed": ["name", "firm", "competence", "signature"],
    "watcher-remark": ["by"],
    "item": ["note"],
    "variation": ["agreedWith"],
    "said": ["text", "alternatives"],
    "readback": ["text"],
}


def body_of(entry):
    """What the hash of an entry is taken over."""
    body = {key: value for key, value in entry.items() if key != "hash"}
    if "sealed" in body:
        body.pop("salt", None)
        fields = NAMES.get(entry["fact"]["type"], [])
        body["fact"] = {key: value for key, value in entry["fact"].items() if key not in fields}
    return body


def sealed_as(salt, names):
    return hashlib.sha256(bytes.fromhex(salt) + canonical(names).encode("utf-8")).hexdigest()


def names_are_right(entry, forgotten):
    """Whether what names people is what the entry was sealed with, or the log says that it was forgotten (R111)."""
    if "sealed" not in entry:
        return True
    if "salt" not in entry:
        return entry["seq"] in forgotten
    fields = NAMES.get(entry["fact"]["type"], [])
    names = {key: value for key, value in entry["fact"].items() if key in fields}
    return entry["seq"] not in forgotten and sealed_as(entry["salt"], names) == entry["sealed"]


def check_chain(entries, head):
    """The number of the first entry that is not as it should be; None if the log is whole."""
    before = GENESIS
    forgotten = {
        seq
        for entry in entries
        if entry["fact"]["type"] == "names-forgotten"
        for seq in entry["fact"]["entries"]
        if seq < entry["seq"]
    }
    for seq, entry in enumerate(entries):
        body = body_of(entry)
        whole = names_are_right(entry, forgotten) and entry["job"] == head["job"] and entry["seq"] == seq and entry["prev"] == before
        if not whole or sha256(canonical(body)) != entry["hash"]:
            return seq
        before = entry["hash"]
    return None if head["count"] == len(entries) and head["hash"] == before else len(entries)


def main(origin):
    api = Api(origin)
    setup = {
        "site": "Larkmoor hall", "pair": "Beam 4", "meter": METER, "adjusters": ADJUSTERS,
        "pathLength": 60, "scope": "commissioning",
    }
    opened = json.loads(api.ask("POST", "/api/jobs", {"setup": setup, "device": "python", "person": {"name": "B. Example"}}, status=201))
    joined = json.loads(api.ask("POST", "/api/join", {"code": opened["invite"]["code"], "device": "python"}))
    phones = {"panel": Phone(origin, opened["token"]), "emitter": Phone(origin, joined["token"])}
    pair = Pair()
    panel, emitter = phones["panel"], phones["emitter"]
    # How the unit hangs, as the person at it sees it (R83); one who watches says something to the crew (R13).
    emitter.send("mounted", mounting="top-left")
    watcher = Phone(origin, opened["watch"], name="S. Example")
    watcher.send("remark", text="Mind the crane.", by="S. Example")
    answered, orders, said_words, first = -1, [], set(), None
    while True:
        order = panel.order()
        if order is None or order["seq"] <= answered:
            # A hold ends by the server's clock; then comes the next order.
            panel.take_until(lambda message: message["t"] == "entries")
            continue
        answered = order["seq"]
        # The order has reached the ladder: shown, and spoken to its end (R82).
        if order["fact"]["advice"]["to"] != "panel":
            while emitter.entries[-1]["seq"] < answered:
                emitter.take_until(lambda message: message["t"] == "entries")
            for how in ("shown", "spoken"):
                emitter.socket.send({"t": "receipt", "instruction": answered, "how": how})
        action = order["fact"]["advice"]["action"]
        orders.append(action["kind"])
        if len(orders) > 400:
            raise SystemExit(f"no end after 400 orders: {orders[-20:]}")
        if action["kind"] == "hold":
            time.sleep(max(0, (action["until"] - order["at"]) / 1000))
        said = follow(pair, action)
        if said is None:
            break
        seat, text = said
        identity = phones[seat].say(text, answered)
        said_words.add(text)
        first = first or (identity, phones[seat].acknowledged[identity])
        if seat == "emitter":
            after = phones[seat].entries[-1]["seq"]
            while panel.entries[-1]["seq"] < after:
                panel.take_until(lambda message: message["t"] == "entries")
    panel.send("hand-over", fact={"type": "as-left", "values": {"signal": int(pair.reading()), "receiverSerial": "R-0012"}})
    panel.send("hand-over", fact={"type": "next-due", "what": "Clean and test", "on": "2027-11-26"})
    panel.send("remark", text="Cover lock is stiff.")
    moved = {"upright": "left-right", "upside-down": "left-right", "top-left": "up-down", "top-right": "up-down"}
    mounted = [entry["fact"]["mounting"] for entry in panel.entries if entry["fact"]["type"] == "mounted"]
    watch = opened["watch"]
    record = json.loads(api.ask("GET", "/api/record", token=watch))
    entries, head = record["entries"], record["head"]
    lines = api.ask("GET", "/api/export.jsonl", token=watch).rstrip("\n").split("\n")
    closing = json.loads(lines[-1])
    for line, entry in zip(lines, entries):
        # {"hash":"H","entry":B}: B is the exact text that was hashed.
        text = line[len('{"hash":"') + 64 + len('","entry":') : -1]
        if "sealed" in entry:
            text, names = text.split(',"names":')
            beside = json.loads(names)
            if sealed_as(beside["salt"], beside["of"]) != json.loads(text)["sealed"]:
                raise SystemExit(f"the names of line {entry['seq']} are not as its hash says")
        if sha256(text) != entry["hash"] or text != canonical(json.loads(text)):
            raise SystemExit(f"line {entry['seq']} of the export is not as its hash says")
    changed = json.loads(json.dumps(entries))
    changed[3]["at"] += 1
    renamed = json.loads(json.dumps(entries))
    for entry in renamed:
        if entry["fact"].get("person"):
            entry["fact"]["person"]["name"] = "Somebody Else"
    taken = [{key: value for key, value in entry.items() if key != "salt"} for entry in entries]
    identity, seq = first
    facts = [entry["fact"]["type"] for entry in entries]
    print(
        json.dumps(
            {
                "orders": sorted(set(orders)),
                "said": sorted(said_words),
                "handedOver": [e["fact"] for e in entries if e["fact"]["type"] in ("as-left", "next-due")],
                "turns": orders.count("turn"),
                "firstAtUnit": next(kind for kind in orders if kind not in ("confirm-item", "read", "hold")),
                "mounted": [[each, moved[each]] for each in mounted],
                "watcherSaid": [e["fact"] for e in entries if e["fact"]["type"] == "watcher-remark"],
                "watching": panel.watching,
                "receipts": sorted({how for _, how in panel.receipts}),
                "receiptsOfOrders": all(entries[seq]["fact"]["type"] == "instruction" for seq, _ in panel.receipts),
                "accepted": facts.count("accept"),
                "panel": [e["fact"]["shows"] for e in entries if e["fact"]["type"] == "panel"],
                "entries": len(entries),
                "lines": len(lines),
                "fault": check_chain(entries, head),
                "exportHead": closing["head"] == head,
                "changedFault": check_chain(changed, head),
                "sealed": sorted({e["fact"]["type"] for e in entries if "sealed" in e}),
                "renamedFault": check_chain(renamed, head),
                "takenFault": check_chain(taken, head),
                "firstSealed": next(e["seq"] for e in entries if "sealed" in e),
                "refOfFirst": entries[seq].get("ref") == identity,
                "sameAtBothPhones": phones["emitter"].entries == panel.entries[: len(phones["emitter"].entries)],
            }
        )
    )


if __name__ == "__main__":
    if sys.argv[1] == "--canonical":
        print(canonical(json.loads(sys.stdin.read(), parse_int=lambda t: int(t) if abs(int(t)) < 2**53 else float(t))))
    else:
        main(sys.argv[1])
