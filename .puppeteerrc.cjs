// The browser comes inside a package (or is already installed): never download one.
module.exports = { skipDownload: true };
