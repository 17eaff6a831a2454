// Which service stock comes from: none in the file that people keep. The served page has its own module of this name.

export const SERVICE = '';
