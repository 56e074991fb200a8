package cover

// WithFleece is the cover with fleece on the crop under it, and whether fleece can be laid
// there: under covers that stand clear of the crop. The fleece is as in a tunnel.
func (c *Cover) WithFleece() (*Cover, bool) {
	switch c.kind {
	case Tunnel, TunnelTwo, Glasshouse, ColdFrame, LowTunnel:
	default:
		return nil, false
	}
	inner, err := Lookup(TunnelInner)
	if err != nil {
		return nil, false
	}
	own, outer := *inner, c.own
	own.outer = &outer
	own.light, own.rain = own.own.lightShare*outer.lightShare, own.own.rainShare*outer.rainShare
	return &own, true
}
