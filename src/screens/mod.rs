pub fn start() {}
