// Package broker listens to an MQTT broker at home for what instruments send, and
// hands it on in batches to be kept.
//
// Method: MQTT 3.1.1 (OASIS standard, 2014) by an existing client library, quality
// of service 1 and a session that the broker keeps (clean session off): what is
// sent while the program is away waits at the broker. A message is acknowledged
// only when it was kept, so that none that was acknowledged is lost; one that was
// kept and whose acknowledgement was lost on the way comes again, marked as such,
// and is known by its number and content. A link that drops is tried again by
// itself, after pauses that grow.
package broker
