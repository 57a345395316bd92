declare module 'jsts/*';
